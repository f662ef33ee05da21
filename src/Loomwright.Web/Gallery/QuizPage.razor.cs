using Loomwright.Gallery;
using Loomwright.Text;
using Loomwright.Web.Bikes;
using Loomwright.Web.Try;
using Microsoft.AspNetCore.Components;

namespace Loomwright.Web.Gallery;

/// <summary>One broken bike to operate, with its mistake hidden until it is named or given up.</summary>
public sealed partial class QuizPage
{
    private const int MostWrong = 4;

    private readonly HashSet<Mistake> tried = [];
    private Session? session;
    private BrokenBike? broken;
    private Mistake? answer;
    private List<Mistake> choices = [];
    private string doing = "";
    private string said = "";
    private string? told;
    private string? chosen;
    private bool live;

    /// <summary>Which one, from 1.</summary>
    [Parameter]
    public int Number { get; set; }

    [Inject]
    private Garage Garage { get; set; } = null!;

    protected override void OnParametersSet()
    {
        broken = Number >= 1 && Number <= BrokenBike.All.Length ? BrokenBike.All[Number - 1] : null;
        session = broken is null || Garage.Find(broken.Path) is not { Loom: not null } bike ? null : Session.Start(bike);
        (said, told) = ("", null);
        tried.Clear();
        if (session is null)
        {
            return;
        }

        answer = session.Catalogue.First(m => Names.Same(m.Fault.ToString(), broken!.Fault));
        session.IsHidden = true;
        session.PutIn(answer);
        session.Changed = StateHasChanged;
        choices = Choices(session.Catalogue, answer);
        doing = broken!.Do.IsEmpty ? "Nothing need be touched to see it." : $"To see it: {string.Join(", then ", broken.Do.Select(d => $"{d.Control} to {d.Position}"))}.";
    }

    protected override void OnAfterRender(bool firstRender)
    {
        if (firstRender)
        {
            live = true;
            StateHasChanged();
        }
    }

    // The wrong ones are of the same neighbourhood first; which and in what order follows from the number alone.
    private List<Mistake> Choices(IReadOnlyList<Mistake> all, Mistake right)
    {
        var random = new Random(Number);
        var near = all.Where(m => m != right && m.Sentence != right.Sentence && m.Sentence.Split(' ').Intersect(right.About.Split(' '), StringComparer.OrdinalIgnoreCase).Any()).ToList();
        return [.. near.OrderBy(_ => random.Next()).Concat(all.Where(m => m != right).OrderBy(_ => random.Next()))
            .DistinctBy(m => m.Sentence).Take(MostWrong).Append(right).OrderBy(_ => random.Next())];
    }

    private void Say(Mistake choice)
    {
        if (choice == answer)
        {
            Reveal("Right:");
            return;
        }

        tried.Add(choice);
        said = $"It is not so that {choice.Sentence}. Operate it and look once more.";
    }

    private void Tell() => Reveal("It is this:");

    private void Reveal(string words)
    {
        (told, said) = (words, "");
        session!.IsHidden = false;
        session.Rest();
        foreach (var (control, position) in broken!.Do)
        {
            session.Do(new Simulation.Operation.Set(control, position));
        }
    }
}
