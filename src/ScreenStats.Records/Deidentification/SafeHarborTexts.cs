using ScreenStats.Records.Understanding;

namespace ScreenStats.Records.Deidentification;

/// <summary>What the identifiers of the Safe Harbor list are called, and the headings by which a column of them is known.</summary>
internal static class SafeHarborTexts
{
    private static readonly (SafeHarbor Identifier, string[] Headings)[] Known =
    [
        (SafeHarbor.Names,
        [
            "name", "full name", "first name", "last name", "given name", "family name", "surname", "forename", "middle name", "maiden name", "initials", "patient name",
            "employee name", "person name", "staff name", "subject name", "participant name", "worker name", "operator name", "tester name", "contact name", "next of kin",
            "emergency contact", "manager", "supervisor name", "vorname", "nachname", "familienname", "geburtsname", "mitarbeitername", "patientenname", "nom", "prenom",
            "nom de famille", "nom complet", "nom du patient", "nombre", "apellido", "apellidos", "nombre completo", "nombre y apellidos", "primer apellido", "segundo apellido",
        ]),
        (SafeHarbor.SmallAreas,
        [
            "address", "home address", "street", "street address", "city", "town", "county", "zip", "zip code", "postcode", "postal code", "post code", "latitude", "longitude",
            "lat", "lon", "lng", "geo", "geolocation", "coordinates", "residence", "adresse", "anschrift", "strasse", "plz", "postleitzahl", "wohnort", "ort", "rue", "code postal",
            "ville", "domicile", "direccion", "calle", "codigo postal", "ciudad", "domicilio", "municipio",
        ]),
        (SafeHarbor.Dates,
        [
            "birth", "birth date", "date of birth", "dob", "birthday", "born", "year of birth", "age", "date of death", "admission date", "discharge date", "date admitted",
            "date discharged", "hire date", "geburtsdatum", "geburtstag", "geboren", "alter", "todesdatum", "date de naissance", "naissance", "ddn", "fecha de nacimiento",
            "nacimiento", "edad",
        ]),
        (SafeHarbor.TelephoneNumbers,
        [
            "phone", "telephone", "tel", "mobile", "cell", "cell phone", "cellphone", "phone number", "mobile number", "telephone number", "contact number", "home phone",
            "work phone", "whatsapp", "telefon", "telefonnummer", "handy", "handynummer", "mobil", "mobilnummer", "telephone portable", "portable", "numero de telephone",
            "telefono", "movil", "celular", "numero de telefono",
        ]),
        (SafeHarbor.FaxNumbers, ["fax", "fax number", "telefax", "faxnummer", "numero de fax"]),
        (SafeHarbor.EmailAddresses, ["email", "mail", "email address", "mail address", "contact email", "emailadresse", "courriel", "adresse email", "adresse electronique", "correo", "correo electronico"]),
        (SafeHarbor.SocialSecurityNumbers,
        [
            "ssn", "social security", "social security number", "social insurance number", "national insurance number", "nino", "national id", "national identity number",
            "national identification number", "identity number", "personal identity number", "tax id", "tax number", "tin", "sozialversicherungsnummer", "svnr", "sv nummer",
            "steuer id", "steuernummer", "ahv nummer", "numero de securite sociale", "nir", "nss", "numero de seguridad social", "dni", "nie", "nif", "cpf", "bsn", "personnummer",
            "fodselsnummer", "pesel", "aadhaar",
        ]),
        (SafeHarbor.MedicalRecordNumbers,
        [
            "mrn", "medical record", "medical record number", "record number", "chart number", "hospital number", "patient number", "nhs number", "case number", "fallnummer",
            "patientennummer", "aktenzeichen", "numero de dossier", "numero de patient", "ipp", "historia clinica", "numero de historia", "numero de historia clinica",
        ]),
        (SafeHarbor.HealthPlanNumbers,
        [
            "health plan", "health plan number", "health plan beneficiary number", "member id", "member number", "beneficiary", "beneficiary id", "insurance number", "insurance id",
            "policy number", "medicare number", "medicaid number", "versichertennummer", "krankenversicherungsnummer", "kvnr", "numero d'assure", "mutuelle", "numero de afiliado",
            "tarjeta sanitaria",
        ]),
        (SafeHarbor.AccountNumbers,
            ["account", "account number", "account no", "bank account", "iban", "card number", "credit card", "kontonummer", "konto", "numero de compte", "compte", "cuenta", "numero de cuenta"]),
        (SafeHarbor.LicenceNumbers,
        [
            "license", "licence", "license number", "licence number", "drivers license", "driving licence", "drivers licence", "certificate number", "passport", "passport number",
            "fuhrerschein", "fuhrerscheinnummer", "reisepass", "reisepassnummer", "ausweisnummer", "permis", "permis de conduire", "passeport", "numero de passeport", "pasaporte",
            "licencia", "carnet de conducir",
        ]),
        (SafeHarbor.VehicleIdentifiers, ["vehicle", "vin", "license plate", "licence plate", "plate", "plate number", "registration plate", "car", "kennzeichen", "kfz", "immatriculation", "matricula"]),
        (SafeHarbor.DeviceIdentifiers,
            ["device id", "device identifier", "device serial", "serial", "serial number", "imei", "mac", "mac address", "phone id", "udid", "seriennummer", "geratenummer", "numero de serie"]),
        (SafeHarbor.WebAddresses, ["url", "website", "web address", "web page", "homepage", "link", "profile", "linkedin", "webseite", "site web", "pagina web"]),
        (SafeHarbor.InternetAddresses, ["ip", "ip address", "ip adresse", "adresse ip", "direccion ip", "ipv4", "ipv6"]),
        (SafeHarbor.Biometrics, ["fingerprint", "finger print", "voice print", "voiceprint", "retina", "iris scan", "biometric", "biometrics", "fingerabdruck", "empreinte", "huella"]),
        (SafeHarbor.FacePhotographs, ["photo", "photograph", "picture", "image", "face", "portrait", "selfie", "foto", "bild", "lichtbild", "imagen"]),
        (SafeHarbor.OtherCodes,
        [
            "user", "user id", "user name", "username", "login", "login name", "account name", "employee number", "staff number", "payroll number", "personnel id", "benutzer",
            "benutzername", "personalnummer", "mitarbeiternummer", "utilisateur", "identifiant", "matricule", "usuario", "numero de empleado", "signature", "unterschrift", "firma",
        ]),
    ];

    private static readonly Dictionary<string, SafeHarbor> ByHeading = Known.SelectMany(entry => entry.Headings.Select(heading => (Heading: TextFold.Fold(heading), entry.Identifier)))
        .DistinctBy(entry => entry.Heading).ToDictionary(entry => entry.Heading, entry => entry.Identifier, StringComparer.Ordinal);

    /// <summary>The identifier that a heading announces.</summary>
    public static SafeHarbor OfHeading(string heading) => ByHeading.GetValueOrDefault(TextFold.Fold(heading));

    /// <summary>Its letter and name.</summary>
    public static string Of(SafeHarbor identifier) => $"({(char)identifier}) " + identifier switch
    {
        SafeHarbor.Names => "names",
        SafeHarbor.SmallAreas => "places smaller than a State, such as addresses and postal codes",
        SafeHarbor.Dates => "dates about a person, such as of birth, and ages above 89",
        SafeHarbor.TelephoneNumbers => "telephone numbers",
        SafeHarbor.FaxNumbers => "fax numbers",
        SafeHarbor.EmailAddresses => "e-mail addresses",
        SafeHarbor.SocialSecurityNumbers => "social security and other national numbers",
        SafeHarbor.MedicalRecordNumbers => "medical record numbers",
        SafeHarbor.HealthPlanNumbers => "health plan beneficiary numbers",
        SafeHarbor.AccountNumbers => "account numbers",
        SafeHarbor.LicenceNumbers => "certificate and licence numbers",
        SafeHarbor.VehicleIdentifiers => "vehicle identifiers and plates",
        SafeHarbor.DeviceIdentifiers => "device identifiers and serial numbers",
        SafeHarbor.WebAddresses => "web addresses",
        SafeHarbor.InternetAddresses => "internet addresses (IP)",
        SafeHarbor.Biometrics => "biometric identifiers",
        SafeHarbor.FacePhotographs => "photographs of faces",
        _ => "any other unique number, characteristic or code",
    };
}
