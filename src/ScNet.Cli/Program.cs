using System.Globalization;
using System.Text;
using ScNet.Cli;

// One language and one encoding, wherever the tool runs.
CultureInfo.CurrentUICulture = CultureInfo.InvariantCulture;
using StreamWriter output = new(Console.OpenStandardOutput(), new UTF8Encoding(encoderShouldEmitUTF8Identifier: false), bufferSize: 1 << 16);
using StreamWriter error = new(Console.OpenStandardError(), new UTF8Encoding(encoderShouldEmitUTF8Identifier: false)) { AutoFlush = true };
return Tool.Run(args, output, error, showsProgress: !Console.IsErrorRedirected);
