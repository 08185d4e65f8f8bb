using OnboardHeat.History.Backup;

namespace OnboardHeat.History;

/// <summary>A backup as a file: read whole and verified, without a record.</summary>
public static class BackupFile
{
    /// <summary>What is in it, a line a month.</summary>
    /// <exception cref="InvalidDataException">This is no backup, a damaged one, or one of a newer version.</exception>
    public static async Task<IReadOnlyList<string>> ReadAsync(Stream from, CancellationToken cancellationToken)
    {
        var months = new List<BackupSurvey>();
        await foreach (var part in new BackupReader(from).ReadAsync(cancellationToken))
        {
            switch (part)
            {
                case { Kind: BackupPartKind.Month, About: { } about }:
                    months.Add(new BackupSurvey(part.Month, about));
                    break;
                case { Hour: { } hour }:
                    months[^1].Add(hour);
                    break;
                case { Minute: { } minute }:
                    months[^1].Add(minute);
                    break;
            }
        }

        return [.. months.Select(month => month.ToString())];
    }
}
