namespace ScreenStats.Records.Formats;

/// <summary>What a file is, told by its name.</summary>
internal enum FileFormat
{
    /// <summary>Text with a delimiter: CSV and its kin.</summary>
    DelimitedText = 0,

    /// <summary>A workbook in the Office Open XML format.</summary>
    Workbook = 1,

    /// <summary>FHIR R4 Observation resources, one JSON object a line.</summary>
    Observations = 2,

    /// <summary>Typed columns in the Apache Parquet format.</summary>
    Parquet = 3,
}
