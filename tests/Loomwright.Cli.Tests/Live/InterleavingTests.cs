using CsCheck;
using Loomwright.Live;
using Loomwright.ProjectFile;
using Loomwright.Text;

namespace Loomwright.Tests.Live;

/// <summary>Two people change one design, each looking at a state that may be old. A dumb model, lists of names, says what should come out.</summary>
public sealed class InterleavingTests
{
    private static readonly Gen<(int Who, int What, int Pick, bool Looks)> Act = Gen.Select(Gen.Int[0, 1], Gen.Int[0, 7], Gen.Int[0, 99], Gen.Bool);

    [Fact]
    public void Any_interleaving_of_edits_and_undos_ends_as_some_serial_order_of_those_that_were_saved() =>
        Act.Array[0, 16].Sample(acts =>
        {
            using var paper = new Paper();
            var document = paper.Document;
            var seen = new[] { document.Current, document.Current };
            var done = new List<Deed>();
            for (var at = 0; at < acts.Length; at++)
            {
                var (who, what, pick, looks) = acts[at];
                seen[who] = looks ? document.Current : seen[who];
                if (what >= 6)
                {
                    Back(document, what == 6, who, done);
                    seen[who] = document.Current;
                }
                else if (Deed.Choose(seen[who].Text, who, what, pick, at) is { } deed)
                {
                    var outcome = document.Apply(seen[who].Sha256, [deed.Edit], Paper.Number(who));
                    if (outcome is Written.Saved saved)
                    {
                        done.Where(d => d.Who == who && !d.Stands).ToList().ForEach(d => d.Over = true);
                        done.Add(deed);
                        seen[who] = saved.Now;
                    }
                    else
                    {
                        Assert.Contains(done, d => d.Who != who && d.About == deed.About);
                    }
                }
            }

            var model = new Model(Paper.Text);
            done.Where(d => d.Stands).ToList().ForEach(model.Make);
            Assert.Equal(model.Show(), new Model(paper.OnDisk).Show());
            Assert.Equal(paper.OnDisk, document.Current.Text.Content);
        }, iter: 200);

    private static void Back(LiveDocument document, bool undo, int who, List<Deed> done)
    {
        var place = undo ? document.Undo(Paper.Number(who)) : document.Redo(Paper.Number(who));
        if (place is Written.Saved)
        {
            var mine = done.Where(d => d.Who == who && !d.Over).ToList();
            var deed = undo ? mine.Last(d => d.Stands) : mine.First(d => !d.Stands);
            deed.Stands = !undo;
        }
    }

    /// <summary>One change in the model's words, and as the edit of the text that was looked at.</summary>
    private sealed class Deed(int who, int what, string about, string value, Edit edit)
    {
        public int Who => who;

        public int What => what;

        public string About => about;

        public string Value => value;

        public Edit Edit => edit;

        public bool Stands { get; set; } = true;

        /// <summary>Taken back and then followed by another change of the same person: it cannot come again.</summary>
        public bool Over { get; set; }

        public static Deed? Choose(SourceText seen, int who, int what, int pick, int at)
        {
            var model = new Model(seen.Content);
            var (part, wire) = (model.Parts.Count == 0 ? -1 : pick % model.Parts.Count, model.Wires.Count == 0 ? -1 : pick % model.Wires.Count);
            var value = "v" + Paper.Number(at);
            return what switch
            {
                0 => new(who, what, "n" + value, value, Paper.Part("n" + value, value)),
                1 => new(who, what, "n" + value, value, Paper.Wire("n" + value)),
                2 when part >= 0 => new(who, what, model.Parts[part].Name, value, Paper.Note(model.Parts[part].Name, value)),
                3 when wire >= 0 => new(who, what, model.Wires[wire].Name, value, Paper.Size(wire, value)),
                4 when model.Parts.Count > 1 => new(who, what, model.Parts[part].Name, value, Paper.NoPart(model.Parts[part].Name)),
                5 when model.Wires.Count > 1 => new(who, what, model.Wires[wire].Name, value, Paper.NoWire(wire)),
                _ => null,
            };
        }
    }

    private sealed class Model
    {
        public Model(string text)
        {
            var root = Tree.Read(new SourceText("b", text)).Root;
            // A key with nothing after it is an empty list.
            Parts = [.. ((root.Find("parts")!.Value as Node.Map)?.Entries ?? []).Select(e => (e.Key.Text, Word((Node.Map)e.Value, "notes")))];
            Wires = [.. ((root.Find("wires")!.Value as Node.List)?.Items ?? []).Cast<Node.Map>().Select(w => (Word(w, "name"), Word(w, "size")))];
        }

        public List<(string Name, string Note)> Parts { get; }

        public List<(string Name, string Size)> Wires { get; }

        public void Make(Deed deed)
        {
            switch (deed.What)
            {
                case 0:
                    Parts.Add(("n" + deed.Value, deed.Value));
                    break;
                case 1:
                    Wires.Add(("n" + deed.Value, "1"));
                    break;
                case 2:
                    Parts[Parts.FindIndex(p => p.Name == deed.About)] = (deed.About, deed.Value);
                    break;
                case 3:
                    Wires[Wires.FindIndex(w => w.Name == deed.About)] = (deed.About, deed.Value);
                    break;
                case 4:
                    Parts.RemoveAt(Parts.FindIndex(p => p.Name == deed.About));
                    break;
                default:
                    Wires.RemoveAt(Wires.FindIndex(w => w.Name == deed.About));
                    break;
            }
        }

        // Who stands before whom says nothing about the bike: what is taken away and put back may come behind what was added meanwhile.
        public string Show() => string.Join(' ', Parts.Order()) + " / " + string.Join(' ', Wires.Order());

        private static string Word(Node.Map map, string key) => ((Node.Scalar)map.Find(key)!.Value).Text;
    }
}
