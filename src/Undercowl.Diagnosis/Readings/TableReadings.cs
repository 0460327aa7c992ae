namespace Undercowl.Diagnosis.Readings;

/// <summary>
/// Choices by a table. Lastingly, the check would show choice v with probability L(v | level), a doubtful hand mixing in
/// any choice; each look shows v, or with the chance <c>fresh</c> any choice. For readings r_i the likelihood is
/// sum over v of L(v | level) times the product over i of ((1 - fresh) [r_i = v] + fresh / choices).
/// </summary>
internal static class TableReadings
{
    public static double[]? Likelihood(ReadingGroup group)
    {
        var check = group.Check;
        var choices = check.Choices;
        var looks = new double[choices.Count];
        Array.Fill(looks, 1);
        var any = false;
        foreach (var reading in group.Readings)
        {
            if (ReadingLikelihood.Choice(check, reading.Value) is not { } seen)
            {
                continue;
            }

            any = true;
            var fresh = check.Likelihood.Fresh;
            for (var v = 0; v < looks.Length; v++)
            {
                looks[v] *= (choices[v].Id == seen ? 1 - fresh : 0) + fresh / choices.Count;
            }
        }

        if (!any)
        {
            return null;
        }

        var scale = looks.Max();
        var likelihood = new double[group.Levels.Count];
        for (var level = 0; level < likelihood.Length; level++)
        {
            var row = check.Likelihood.Given[group.Levels[level]];
            for (var v = 0; v < looks.Length; v++)
            {
                var lasting = (1 - group.Doubt) * row.GetValueOrDefault(choices[v].Id) + group.Doubt / choices.Count;
                likelihood[level] += lasting * looks[v] / scale;
            }
        }

        return likelihood;
    }
}
