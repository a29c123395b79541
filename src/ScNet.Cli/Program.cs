Console.WriteLine("scnet");
