using ScNet.Design.Maps;

namespace ScNet.Reporting.Charts.Plotting;

/// <summary>Writes the name of each connected region of a map where it fits, farthest from the region's edge.</summary>
internal static class RegionNames
{
    public static void Add(Figure figure, Panel panel, MapPoint[,] points, CellEdges x, CellEdges y, Func<MapPoint, string> name)
    {
        int columns = points.GetLength(0), rows = points.GetLength(1);
        bool[,] seen = new bool[columns, rows];
        for (int i = 0; i < columns; i++)
        {
            for (int j = 0; j < rows; j++)
            {
                if (!seen[i, j])
                {
                    Write(Region(i, j), name(points[i, j]));
                }
            }
        }

        HashSet<(int X, int Y)> Region(int column, int row)
        {
            HashSet<(int X, int Y)> region = [];
            Stack<(int X, int Y)> open = new([(column, row)]);
            while (open.TryPop(out (int X, int Y) at))
            {
                if (at.X < 0 || at.Y < 0 || at.X >= columns || at.Y >= rows || seen[at.X, at.Y] || points[at.X, at.Y].BestModeIndex != points[column, row].BestModeIndex)
                {
                    continue;
                }

                seen[at.X, at.Y] = true;
                region.Add(at);
                foreach ((int X, int Y) step in ((int X, int Y)[])[(1, 0), (-1, 0), (0, 1), (0, -1)])
                {
                    open.Push((at.X + step.X, at.Y + step.Y));
                }
            }

            return region;
        }

        void Write(HashSet<(int X, int Y)> region, string text)
        {
            TextSpot spot = new("gear", 0, 0, text, TextAnchor.Middle) { IsBold = true, HasPlate = true };
            (double X, double Y, double Room)? best = null;
            foreach ((int column, int row) in region.Order())
            {
                double middle = (panel.PixelX(x.Edges[column]) + panel.PixelX(x.Edges[column + 1])) / 2, height = (panel.PixelY(y.Edges[row]) + panel.PixelY(y.Edges[row + 1])) / 2;
                Box box = (spot with { X = middle, Y = height + 4 }).Box;
                double room = Room(region, box);
                if (room > 0 && !(room <= best?.Room))
                {
                    best = (middle, height + 4, room);
                }
            }

            if (best is { } place)
            {
                figure.Add(spot with { X = place.X, Y = place.Y });
            }
        }

        // how far a box is from the nearest cell outside of the region and from the edge of the panel; not positive where it lies on one
        double Room(HashSet<(int X, int Y)> region, Box box)
        {
            const double Least = 3;
            double room = Math.Min(
                Math.Min(box.Left - panel.Area.Left, panel.Area.Right - box.Right), Math.Min(box.Top - panel.Area.Top, panel.Area.Bottom - box.Bottom)) - Least;
            for (int i = 0; i < columns && room > 0; i++)
            {
                for (int j = 0; j < rows && room > 0; j++)
                {
                    if (!region.Contains((i, j)))
                    {
                        double across = Math.Max(panel.PixelX(x.Edges[i]) - box.Right, box.Left - panel.PixelX(x.Edges[i + 1]));
                        double along = Math.Max(panel.PixelY(y.Edges[j + 1]) - box.Bottom, box.Top - panel.PixelY(y.Edges[j]));
                        room = Math.Min(room, Math.Max(across, along) - Least);
                    }
                }
            }

            return room;
        }
    }
}
