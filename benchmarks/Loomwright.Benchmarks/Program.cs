using BenchmarkDotNet.Columns;
using BenchmarkDotNet.Configs;
using BenchmarkDotNet.Jobs;
using BenchmarkDotNet.Loggers;
using BenchmarkDotNet.Reports;
using BenchmarkDotNet.Running;
using BenchmarkDotNet.Toolchains.InProcess.Emit;
using Loomwright.Benchmarks;
using Loomwright.Oracle;

if (args is ["questions"])
{
    Questions.Print();
    return 0;
}

if (!Ngspice.IsInstalled)
{
    Console.Error.WriteLine("libngspice0 is not installed: there is nothing to measure beside.");
    return 1;
}

foreach (var each in Cases.All)
{
    if (!Sides.Agree(each.Circuit))
    {
        Console.Error.WriteLine("the two do not agree on " + each.Name);
        return 1;
    }
}

Console.Error.WriteLine("same answers on all circuits; measuring");
var config = ManualConfig.CreateEmpty()
    .AddJob(Job.ShortRun.WithIterationTime(Perfolizer.Horology.TimeInterval.FromMilliseconds(100)).WithToolchain(InProcessEmitToolchain.Instance))
    .AddColumnProvider(DefaultColumnProviders.Instance)
    .AddLogger(NullLogger.Instance)
    .WithOption(ConfigOptions.DisableOptimizationsValidator, true);
var reports = BenchmarkRunner.Run<Sides>(config).Reports.ToLookup(report => report.BenchmarkCase.Parameters["Case"].ToString());

Console.WriteLine("one operating point, microseconds");
Console.WriteLine($"{"",-32} {"ours cold",12} {"ngspice",12} {"ratio",8} {"ours warm",12} {"ngspice",12} {"ratio",8}");
foreach (var each in Cases.All)
{
    var (cold, coldReference) = (Microseconds(each, nameof(Sides.OursCold)), Microseconds(each, nameof(Sides.NgspiceCold)));
    var (warm, warmReference) = (Microseconds(each, nameof(Sides.OursWarm)), Microseconds(each, nameof(Sides.NgspiceWarm)));
    Console.WriteLine(FormattableString.Invariant(
        $"{each.Name,-32} {cold,12:F1} {coldReference,12:F1} {coldReference / cold,8:F1} {warm,12:F1} {warmReference,12:F1} {warmReference / warm,8:F1}"));
}

Picture.Print();
Dictionaries.Print();
Questions.Print();
return 0;

double Microseconds(Case of, string method) =>
    reports[of.Name].Single(report => report.BenchmarkCase.Descriptor.WorkloadMethod.Name == method).ResultStatistics!.Mean / 1000;
