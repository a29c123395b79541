using ScNet.Derivations;

namespace ScNet.Fuzzing.Targets;

/// <summary>Analysis documents: what is accepted reads the same again and differs in nothing from itself, what is not is refused at its place.</summary>
internal static class SnapshotTarget
{
    public static void Try(byte[] bytes)
    {
        string text = TextInput.Of(bytes);
        AnalysisSnapshot snapshot;
        try
        {
            snapshot = AnalysisSnapshot.Parse(text);
        }
        catch (ScNetException refusal)
        {
            Property.Findings(text, isAccepted: false, refusal.Diagnostics);
            return;
        }

        AnalysisSnapshot again = AnalysisSnapshot.Parse(snapshot.ToJson());
        Property.Same(snapshot.ToString(), again.ToString(), "the snapshot that was read and the one that was saved and read");
        Property.Holds(snapshot.Equals(again) && snapshot.GetHashCode() == again.GetHashCode(), "equal snapshots, read and read again");
        Property.Holds(AnalysisDifference.Between(snapshot, again).IsEmpty, "no difference of a snapshot from itself");
    }
}
