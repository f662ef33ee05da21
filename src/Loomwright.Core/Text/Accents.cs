using System.Collections.Frozen;
using System.Text;

namespace Loomwright.Text;

/// <summary>
/// Puts a letter and the accent typed after it into the one character they are (Unicode composition, form C, of Latin
/// and Cyrillic letters with one accent). The program runs without a culture's tables, so it brings its own.
/// </summary>
internal static class Accents
{
    // Each accent with letter, composed letter, letter, composed letter, …
    private static readonly (char Accent, string Pairs)[] Table =
    [
        ('\u0300', "AÀEÈIÌOÒUÙaàeèiìoòuù"),
        ('\u0301', "AÁEÉIÍOÓUÚYÝCĆNŃSŚZŹLĹRŔaáeéiíoóuúyýcćnńsśzźlĺrŕ"),
        ('\u0302', "AÂEÊIÎOÔUÛWŴYŶCĈGĜHĤJĴSŜaâeêiîoôuûwŵyŷcĉgĝhĥjĵsŝ"),
        ('\u0303', "AÃNÑOÕIĨUŨaãnñoõiĩuũ"),
        ('\u0304', "AĀEĒIĪOŌUŪaāeēiīoōuū"),
        ('\u0306', "AĂGĞUŬИЙaăgğuŭий"),
        ('\u0307', "CĊEĖGĠIİZŻcċeėgġzż"),
        ('\u0308', "AÄEËIÏOÖUÜYŸЕЁaäeëiïoöuüyÿеё"),
        ('\u030a', "AÅUŮaåuů"),
        ('\u030b', "OŐUŰoőuű"),
        ('\u030c', "CČDĎEĚNŇRŘSŠTŤZŽcčdďeěnňrřsštťzž"),
        ('\u0327', "CÇGĢKĶLĻNŅRŖSŞTŢcçkķlļnņrŗsştţ"),
        ('\u0328', "AĄEĘIĮUŲaąeęiįuų"),
    ];

    private static readonly FrozenDictionary<(char Letter, char Accent), char> Composed =
        Table.SelectMany(row => row.Pairs.Chunk(2).Select(pair => KeyValuePair.Create((pair[0], row.Accent), pair[1]))).ToFrozenDictionary();

    public static string Compose(string text)
    {
        if (!text.Any(c => c is >= '\u0300' and <= '\u036f'))
        {
            return text;
        }

        var composed = new StringBuilder(text.Length);
        foreach (var c in text)
        {
            if (composed.Length > 0 && Composed.TryGetValue((composed[^1], c), out var one))
            {
                composed[^1] = one;
            }
            else
            {
                composed.Append(c);
            }
        }

        return composed.ToString();
    }
}
