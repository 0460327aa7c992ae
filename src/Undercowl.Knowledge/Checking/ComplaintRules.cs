namespace Undercowl.Knowledge.Checking;

/// <summary>Complaints: what they are evidence of, and the test that proves them gone.</summary>
internal static class ComplaintRules
{
    public static void Check(Inspection inspection)
    {
        inspection.Ids("complaint", inspection.Complaints.All.Select(c => c.Id), "/complaints");
        for (var i = 0; i < inspection.Complaints.All.Count; i++)
        {
            var complaint = inspection.Complaints.All[i];
            var path = inspection.Complaints.Path(i);
            inspection.Source(complaint.Source, path);
            SetUpRules.Named(inspection, complaint.SetUp.Select(s => (s.Key, new OneOrMore([s.Value]))), path.Member("set-up"));
            if (inspection.Find(inspection.Quantities, complaint.Quantity, path.Member("quantity")) is { } quantity)
            {
                Given(inspection, complaint.Given, quantity, path);
                Levels(inspection, complaint, quantity, path);
            }

            for (var k = 0; k < complaint.Also.Count; k++)
            {
                var (said, at) = (complaint.Also[k], path.Member("also").Entry(k));
                SetUpRules.Named(inspection, said.SetUp.Select(s => (s.Key, new OneOrMore([s.Value]))), at.Member("set-up"));
                if (inspection.Find(inspection.Quantities, said.Quantity, at.Member("quantity")) is { } besides)
                {
                    Given(inspection, said.Given, besides, at);
                }
            }

            SystemTest(inspection, complaint, path);
            for (var k = 0; k < complaint.Proofs.Count; k++)
            {
                inspection.Find(inspection.Proofs, complaint.Proofs[k], path.Member("proofs").Entry(k));
            }
        }
    }

    private static void Given(Inspection inspection, Dictionary<string, double> given, Quantity quantity, string path)
    {
        foreach (var level in quantity.Levels.Where(l => !given.ContainsKey(l)))
        {
            inspection.Report(path.Member("given"), $"there is no chance for the level {level} of {quantity.Id}", $"add {level}: and the chance that this complaint is made of it");
        }

        foreach (var (level, chance) in given)
        {
            var at = path.Member("given").Member(level);
            inspection.OneOf($"level of {quantity.Id},", level, quantity.Levels, at);
            inspection.Chance(chance, at);
            if (chance == 0)
            {
                inspection.Report(at, $"with 0 the complaint would prove that {quantity.Id} is not {level}", "owners err: write a small number");
            }
        }
    }

    private static void Levels(Inspection inspection, Complaint complaint, Quantity quantity, string path)
    {
        for (var i = 0; i < complaint.Healthy.Count; i++)
        {
            inspection.OneOf($"level of {quantity.Id},", complaint.Healthy[i], quantity.Levels, path.Member("healthy").Entry(i));
        }

        if (complaint.Healthy.Count == 0)
        {
            inspection.Report(path.Member("healthy"), "no level is healthy, so the complaint could never be gone", $"name the levels of {quantity.Id} at which it is");
        }
    }

    private static void SystemTest(Inspection inspection, Complaint complaint, string path)
    {
        if (inspection.Find(inspection.Checks, complaint.SystemTest, path.Member("system-test")) is not { } test)
        {
            return;
        }

        for (var i = 0; i < complaint.Good.Count; i++)
        {
            inspection.OneOf($"choice of {test.Id},", complaint.Good[i], test.Choices.Select(c => c.Id), path.Member("good").Entry(i));
        }

        if (complaint.Good.Count == 0)
        {
            inspection.Report(path.Member("good"), "no choice is good, so the repair could never be proven", $"name the good choices of {test.Id}");
        }

        foreach (var (key, value) in complaint.SetUp)
        {
            if (test.SetUp.TryGetValue(key, out var other) && other != value)
            {
                inspection.Report(path.Member("system-test"), $"{test.Id} is made with {key}: {other}, not {value}", "name a check that can be made in the complaint's own set-up");
            }
        }
    }
}
