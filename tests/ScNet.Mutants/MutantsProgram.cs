namespace ScNet.Mutants;

internal static class MutantsProgram
{
    private static int Main(string[] args)
    {
        try
        {
            return args switch
            {
                ["try", var room, var rooms, var report, var folder] => Campaign.Run(RoomTests.Read(rooms, room), report, folder),
                [Work.CoverVerb, var folder] => Work.Cover(folder),
                [Work.TryVerb, var folder, var worker] => Work.Try(folder, worker),
                _ => Usage(),
            };
        }
        catch (Exception exception) when (exception is InvalidDataException or FileNotFoundException)
        {
            Console.Error.WriteLine(exception.Message);
            return 2;
        }
    }

    private static int Usage()
    {
        Console.Error.WriteLine("ScNet.Mutants try ROOM ROOMS.json REPORT.json FOLDER: what becomes of the mutants of REPORT is written into it; see docs/mutation-testing.md.");
        return 2;
    }
}
