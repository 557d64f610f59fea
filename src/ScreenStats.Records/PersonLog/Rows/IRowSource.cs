namespace ScreenStats.Records.PersonLog.Rows;

/// <summary>Looks rows up again in the export: for the few that counting has to see a second time.</summary>
internal interface IRowSource
{
    /// <summary>File name and physical line of a record.</summary>
    RowPlace Place(uint record);

    /// <summary>The row again, as understood the first time.</summary>
    RunRow Read(uint record);

    /// <summary>
    /// True where two rows mean the same in every mapped column: compared value by value, not by hash.
    /// </summary>
    bool MeanTheSame(uint first, uint second);

    /// <summary>True where two rows of the screening export have the same screen_id: compared by its text, not by hash.</summary>
    bool HaveOneScreenId(uint first, uint second);
}
