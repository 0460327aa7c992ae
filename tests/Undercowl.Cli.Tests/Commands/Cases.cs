using Xunit;

namespace Undercowl.Cli.Tests.Commands;

/// <summary>
/// For every command a use that works, what it says, and the documents that it prints with <c>--json</c>; and a use that does
/// not, its exit code, and words of the message: what is wrong where, and how to mend it. Words are split at blanks the
/// way a shell would; a word with blanks in it stands in single quotes.
/// </summary>
internal static class Cases
{
    private const string Cause = "lanyard-switch@side:boat.clip=off";

    public static TheoryData<string, string, string> Good => new()
    {
        { "layouts", "four-stroke-4-inductive", "Layouts" },
        { "checks visit.jsonl", "spark-to-ground", "Checks" },
        { "checks --layout four-stroke-4-inductive", "pair-coil-swap-spark", "Checks" },
        { "remedies visit.jsonl", "clip-lanyard", "Remedies" },
        { "start new.jsonl --layout four-stroke-4-inductive --complaint misses --words 'dies off the point' --previous visit.jsonl", "Started new.jsonl.", "Recorded" },
        { "intake visit.jsonl how-it-died at-once --hearsay", "how-it-died: at-once", "Recorded" },
        { "intake visit.jsonl", "at-once | ", "Questions" },
        { "ambient visit.jsonl --temperature 12C --altitude 300m", "ambient", "Recorded" },
        { "specs visit.jsonl ignition-coil coil-secondary-ohms --low 0.8kohm --high 1.2kohm --origin 'service manual, ignition'", "ignition-coil coil-secondary-ohms", "Recorded" },
        { "tools visit.jsonl --have spark-tester --lack multimeter", "recorded", "Recorded" },
        { "tools mixed.jsonl", "lacking", "Tools" },
        { "rate visit.jsonl 85 EUR", "rate", "Recorded" },
        { "work visit.jsonl", "The job is open after 1 step here.", "Step Ended" },
        { "next mixed.jsonl --top 2", "To put back before sign-off", "Next" },
        { "next visit.jsonl --all", "compression-dry (cyl:1 cyl:2 cyl:3)", "Next" },
        { "record visit.jsonl lanyard-clip home", "lanyard-clip at side:boat: home", "Recorded" },
        { "record visit.jsonl battery-rest-volts 12.4V --tool multimeter --by helper --words 'rested overnight'", "battery-rest-volts", "Recorded" },
        { "record mixed.jsonl coil-swap-spark --at cyl:1 --with cyl:3 2 of 3", "coil-swap-spark at cyl:1: 2 of 3", "Recorded" },
        { "record mixed.jsonl battery-rest-volts 12.4V", "taken with: stop wire off the control unit (as the engine stands;", "Recorded" },
        { "belief odds.jsonl", "Findings at odds", "Belief" },
        { "belief mixed.jsonl --top 3", "as found", "Belief" },
        { "answer mixed.jsonl", "\"engine\":", "Job" },
        { $"why mixed.jsonl {Cause}", "Stepwise", "Why" },
        { $"why mixed.jsonl {Cause} --audit", "knowledge/parts/lanyard-switch.yaml:", "Audit" },
        { $"why mixed.jsonl {Cause} --audit --with parts/lanyard-switch/aspects/clip/conditions/off/prior=0.2", "With the other numbers", "Audit" },
        { "sensitivity mixed.jsonl", "Next:", "Sensitivity" },
        { "swap visit.jsonl ignition-coil cyl:2 cyl:3", "swap ignition-coil cyl:2 cyl:3", "Recorded" },
        { "remedy visit.jsonl replace-plug --at cyl:2", "at cyl:2", "Recorded" },
        { "remedy visit.jsonl replace-plug --at cyl:2 --result in-part", "replace-plug at cyl:2: in-part", "Recorded" },
        { "result repaired.jsonl no-change", "no-change: what came of", "Recorded" },
        { "swap mixed.jsonl ignition-coil cyl:1 cyl:2 --then moved", "spark-to-ground at cyl:2: never", "Recorded" },
        { "set-up visit.jsonl stop-wire=off", "stop-wire=off", "Recorded" },
        { "restore mixed.jsonl all", "swap ignition-coil cyl:2 cyl:3", "Recorded" },
        { "ventilate visit.jsonl", "NOT CLEAR", "Safety" },
        { "ventilate visit.jsonl", "No cooling water: nothing recorded", "Safety" },
        { "ventilate visit.jsonl --clear cowl,bilge", "clear of vapour: cowl, bilge", "Safety" },
        { "acknowledge visit.jsonl fuel-work", "caution read: fuel-work", "Recorded" },
        { "decline visit.jsonl compression-dry --at cyl:1 --why 'no gauge wanted'", "declined compression-dry at cyl:1", "Recorded" },
        { "note visit.jsonl cowl latch is broken", "note", "Recorded" },
        { "withdraw mixed.jsonl last", "taken back", "Withdrawn" },
        { "report mixed.jsonl", "JOB RECORD", "Report" },
        { "merge visit.jsonl copy.jsonl", "1 entries added, 2 in all", "Merged" },
        { "sign-off visit.jsonl --as referred --by technician", "Signed off as referred.", "SignedOff" },
        { "network mixed.jsonl --format uai --out net.uai", "wrote net.uai.evid", "Network" },
        { "network mixed.jsonl --format xmlbif", "<BIF", "Network" },
        { "knowledge check good-knowledge", "In order: sha256:", "Knowledge" },
        { "demo", "Signed off as proven", "Step RecordedStep Ended" },
    };

    public static TheoryData<string, int, string, string> Bad => new()
    {
        { "layouts extra", 2, "extra", "undercowl layouts --help" },
        { "checks --layout two-stroke-3-cd", 1, "There is no engine layout \"two-stroke-3-cd\"", "two-stroke-3-cdi" },
        { "rate visit.jsonl -5 EUR", 1, "-5 EUR is no price of an hour.", "above 0" },
        { "remedies visit.jsonl --layout two-stroke-3-cdi", 1, "A job and a layout are named.", "Name one of them." },
        { "start new.jsonl --layout two-stroke-3-cdi --complaint no-strat", 1, "There is no complaint \"no-strat\"", "no-start" },
        { "start visit.jsonl --layout two-stroke-3-cdi --complaint no-start", 1, "visit.jsonl already holds a job.", "undercowl next visit.jsonl" },
        { "intake visit.jsonl how-it-died at-onec", 1, "\"at-onec\" is no answer of how-it-died.", "at-once" },
        { "ambient visit.jsonl --temperature warm", 1, "warm", "12C" },
        { "ambient visit.jsonl --temperature -200C", 1, "The air temperature is -200", "must be from -60 to 60" },
        { "record visit.jsonl spark-to-ground --at cyl:1 --set-up gap=99mm always", 1, "The tester gap of \"99 mm\" cannot be judged.", "must be from" },
        { "merge visit.jsonl other.jsonl", 1, "other.jsonl is another job", "Merge copies of one job only" },
        { "network visit.jsonl --format xmlbif --out visit.jsonl", 1, "would be written over the job", "Name another file" },
        { "specs visit.jsonl igniton-coil coil-secondary-ohms --low 1ohm --origin manual", 1, "There is no part \"igniton-coil\"", "ignition-coil" },
        { "specs visit.jsonl charge-coil charge-coil-ohms --low -5ohm --origin manual", 1, "-5 ohm is no charge coil resistance", "above 0" },
        { "record visit.jsonl compression-dry --at cyl:1 -- -3psi", 1, "-3 psi is no reading of \"Compression, dry\"", "without the minus" },
        { "tools visit.jsonl --have multimetre", 1, "There is no tool \"multimetre\"", "multimeter" },
        { "rate visit.jsonl much EUR", 1, "much", "digits" },
        { "work visit.json", 1, "There is no job visit.json", "visit.jsonl" },
        { "next visit.jsonl --top none", 2, "\"none\"", "undercowl next --help" },
        { "record visit.jsonl lanyard-clpi home", 1, "There is no check \"lanyard-clpi\"", "lanyard-clip" },
        { "record visit.jsonl spark-to-ground never", 1, "can be done at several places", "--at cyl:1, cyl:2, cyl:3" },
        { "record visit.jsonl spark-to-ground --at cyl:4 never", 1, "cannot be done at cyl:4", "cyl:" },
        { "record visit.jsonl battery-rest-volts 12.4furlongs", 1, "\"12.4furlongs\" is no reading of", "Give a number in V" },
        { "record visit.jsonl spark-to-ground --at cyl:1 --set-up stop-wire never", 1, "\"stop-wire\" is not of the form KEY=VALUE.", "heat=hot" },
        { "record visit.jsonl coil-swap-spark --at cyl:1 never", 1, "exchanges two parts", "--with cyl:3" },
        { "answer not-made-yet.jsonl", 1, "There is no job not-made-yet.jsonl", "undercowl start" },
        { "belief visit.jsonl --tpo 3", 2, "\"--tpo\"", "--top" },
        { $"why visit.jsonl {Cause}f", 1, "There is no cause", Cause },
        { $"why visit.jsonl {Cause} --with parts/lanyard-switch/aspects/clip/conditions/of/prior=0.2", 1, "There is no number parts/lanyard-switch/aspects/clip/conditions/of/prior", "conditions/off/prior" },
        { $"why visit.jsonl {Cause} --with parts/lanyard-switch/aspects/clip/conditions/off/prior=1.2", 1, "With that, ", "." },
        { "sensitivity not-made-yet.jsonl", 1, "There is no job not-made-yet.jsonl", "undercowl start" },
        { "swap visit.jsonl ignition-coil cyl:2 cyl:7", 1, "There is no ignition coil at cyl:7", "cyl:" },
        { "swap visit.jsonl charge-coil cyl:1 cyl:2", 1, "There is one charge coil on this engine", "These can be exchanged: trigger, control-unit" },
        { "swap visit.jsonl ignition-coil cyl:1 cyl:1", 1, "cannot be exchanged with itself", "cyl:1, cyl:2, cyl:3" },
        { "remedy visit.jsonl replace-plug", 1, "can be done at several places", "cyl:1, cyl:2, cyl:3" },
        { "remedy visit.jsonl replace-control-unit --output 4", 1, "The control unit has no output \"4\".", "1, 2, 3" },
        { "remedy visit.jsonl replace-plug --at cyl:1 --output 1", 1, "has no outputs of its own", "Leave --output out" },
        { "remedy visit.jsonl replace-plug --at cyl:1 --result cued", 1, "\"cued\" is not what can come of a remedy.", "cured" },
        { "result visit.jsonl cured", 1, "No remedy has been recorded", "Record the remedy first." },
        { "result repaired.jsonl better", 1, "\"better\" is not what can come of a remedy.", "in-part" },
        { "swap visit.jsonl ignition-coil cyl:1 cyl:2 --then moved", 1, "Nothing was read at both cyl:1 and cyl:2 that told them apart", "Record first what one check read at each" },
        { "swap mixed.jsonl ignition-coil cyl:1 cyl:2 --then gone", 1, "\"gone\" is not what a fault does", "moved, stayed, cleared" },
        { "set-up visit.jsonl stop-wier=off", 1, "stop-wier", "stop-wire" },
        { "set-up visit.jsonl known-good-plug@cyl:4=yes", 1, "\"cyl:4\" is no cylinder of this engine.", "cyl:" },
        { "restore visit.jsonl", 1, "Nothing is to be put back.", "The restore list is empty." },
        { "restore mixed.jsonl", 1, "It is not said what is back.", "or all when all of it is: " },
        { "ventilate visit.jsonl --met anything-at-all", 1, "No interlock asks for \"anything-at-all\"", "Use one of" },
        { "ventilate visit.jsonl --clear blige", 1, "No interlock asks whether \"blige\" is clear.", "bilge" },
        { "acknowledge visit.jsonl fuel-wrok", 1, "There is no caution \"fuel-wrok\"", "fuel-work" },
        { "decline visit.jsonl compression-dry", 2, "--why", "undercowl decline --help" },
        { "note visit.jsonl", 2, "TEXT", "undercowl note --help" },
        { "withdraw visit.jsonl 0000", 1, "There is no entry \"0000\" in this job.", "undercowl report lists them" },
        { "report not-made-yet.jsonl", 1, "There is no job not-made-yet.jsonl", "undercowl start not-made-yet.jsonl" },
        { "merge visit.jsonl not-made-yet.jsonl", 1, "There is no job not-made-yet.jsonl", "undercowl start" },
        { "sign-off mixed.jsonl --by technician", 1, "Not signed off as proven", "missing" },
        { "sign-off visit.jsonl --as provne --by technician", 1, "There is no ending \"provne\"", "proven" },
        { "network visit.jsonl --format uia", 1, "There is no format \"uia\"", "uai" },
        { "knowledge check bad-knowledge", 1, "parts/tank-vent.yaml:", "seldom" },
        { "knowledge", 2, "wants one of: check", "undercowl knowledge --help" },
        { "demo --keep visit.jsonl", 1, "visit.jsonl already holds a job.", "Choose another name" },
        { "belif visit.jsonl", 2, "There is no command \"belif\"", "belief" },
    };

    public static string[] Words(string line)
    {
        var words = new List<string>();
        foreach (var (i, part) in line.Split('\'').Index())
        {
            words.AddRange(i % 2 == 1 ? [part] : part.Split(' ', StringSplitOptions.RemoveEmptyEntries));
        }

        return [.. words];
    }
}
