namespace Undercowl.Inference.Tests;

/// <summary>Every order keeps to the row budget inside each step: what would not fit is not begun.</summary>
public sealed class RowBudgetTests
{
    public static TheoryData<EliminationOrder> Orders => [.. Enum.GetValues<EliminationOrder>()];

    [Theory]
    [MemberData(nameof(Orders))]
    public void A_single_step_that_would_not_fit_is_not_begun(EliminationOrder order)
    {
        // Three nodes of 200 states, read two by two: whichever goes first, its two tables have 200^3 products.
        const int States = 200;
        const long Budget = 1_000_000;
        var random = new Random(1);
        var builder = new NetworkBuilder();
        for (var i = 0; i < 3; i++)
            builder.Add($"root {i}", States, [], [.. Enumerable.Repeat(1.0 / States, States)]);
        var evidence = new Evidence(builder.Build());
        for (var i = 0; i < 3; i++)
            evidence.Likelihood([i, (i + 1) % 3], RandomCases.Positive(random, States * States, 0));
        var before = GC.GetAllocatedBytesForCurrentThread();
        var fits = Elimination.TryExact(evidence, new EliminationOptions { Order = order, RowBudget = Budget }, out _);
        var allocated = GC.GetAllocatedBytesForCurrentThread() - before;
        Assert.False(fits);
        // The given tables take 10 MB or so; the step that does not fit would take 96 MB at twelve bytes a product.
        Assert.True(allocated < 40_000_000, $"{allocated} bytes");
    }

    [Theory]
    [MemberData(nameof(Orders))]
    public void An_answer_never_took_more_than_its_budget(EliminationOrder order)
    {
        int fitted = 0, refused = 0;
        for (var seed = 0; seed < 400; seed++)
        {
            var c = RandomCases.Make(90_000 + seed);
            for (var budget = 8L; budget < 5000; budget *= 3)
            {
                if (!Elimination.TryExact(c.Evidence, new EliminationOptions { Order = order, RowBudget = budget }, out var posterior))
                {
                    refused++;
                    continue;
                }

                fitted += posterior.Products > 0 ? 1 : 0;
                Assert.True(posterior.Products == 0 || posterior.Products + posterior.Rows <= budget, $"seed {seed}: {posterior.Rows} rows, {posterior.Products} products of {budget}");
            }
        }

        Assert.True(fitted > 200 && refused > 200, $"{fitted} fitted, {refused} refused");
    }
}
