namespace Undercowl.Knowledge.Checking;

/// <summary>What is to be shown: that it can be read, and that something asks for it.</summary>
internal static class ProofRules
{
    public static void Check(Inspection inspection)
    {
        inspection.Ids("proof", inspection.Proofs.All.Select(p => p.Id), "/proofs");
        for (var i = 0; i < inspection.Proofs.All.Count; i++)
        {
            var (proof, path) = (inspection.Proofs.All[i], inspection.Proofs.Path(i));
            inspection.Source(proof.Source, path);
            inspection.AtLeast(1, proof.Occasions ?? 1, path.Member("occasions"));
            SetUpRules.Named(inspection, proof.SetUp.Select(s => (s.Key, s.Value)), path.Member("set-up"));
            Readings(inspection, proof, path);
            if (proof.After is { } after && inspection.Whole("remedies", "checks"))
            {
                inspection.OneOf("remedy that does, or check with the danger", after, inspection.Remedies.All.SelectMany(r => r.Does).Concat(inspection.Checks.All.SelectMany(c => c.Hazards)), path.Member("after"));
            }

            if (!proof.Always && proof.After is null && !proof.ComesAndGoes && inspection.Whole("complaints") && !inspection.Complaints.All.Any(c => c.Proofs.Contains(proof.Id)))
            {
                inspection.Note(path, $"nothing asks for {proof.Id}", "name it under proofs of a complaint, or say that it is wanted always, after some work, or of what comes and goes");
            }
        }
    }

    private static void Readings(Inspection inspection, ProofItem proof, string path)
    {
        for (var k = 0; k < proof.Checks.Count; k++)
        {
            if (inspection.Find(inspection.Checks, proof.Checks[k], path.Member("checks").Entry(k)) is not { } check)
            {
                continue;
            }

            if (!check.Choices.Any(c => proof.Good.Contains(c.Id)))
            {
                inspection.Report(path.Member("good"), $"no choice of {check.Id} is good", $"name one of: {string.Join(", ", check.Choices.Select(c => c.Id))}");
            }

            foreach (var (key, values) in proof.SetUp)
            {
                if (check.SetUp.TryGetValue(key, out var made) && !values.Contains(made))
                {
                    inspection.Report(path.Member("checks").Entry(k), $"{check.Id} is made with {key}: {made}", $"name a check that can be made with {key}: {string.Join(" or ", values.Values)}");
                }
            }
        }

        if (proof.Checks.Count == 0 || proof.Good.Count == 0)
        {
            inspection.Report(path, $"{proof.Id} could never be shown", "name checks and their good choices");
        }
    }
}
