using ScreenStats.Records.Understanding;

namespace ScreenStats.Records.Deidentification;

/// <summary>
/// Given and family names that are frequent in English, French, German, Spanish and neighbouring languages, without accents. Left
/// out on purpose, as codes are made of them: words of the spelling alphabet (Charlie, Oscar), plants, stones, months, cities, and
/// words that are also a trade, a colour or a thing. The list is common knowledge, from memory; it finds a column of names, not every name.
/// </summary>
internal static class FrequentNames
{
    private const string Given = """
        aaron adam adrian agnes ahmed alan alana albert alejandra alejandro aleksandra alex alexander alexandra alexandre alexis alfred ali alice alicia allison
        alvaro amanda amelia amelie amina amy ana anastasia andre andrea andreas andrew andrzej angela angelika anita anja anke ann anna annabelle anne
        annette annika anthony antje anton antonia antonio arnaud arthur astrid aurelie axel barbara barry beate beatrice beatriz ben benedikt benjamin benoit bernard
        bernd bernhard bertrand beth betty birgit bob brenda brian brigitte bruno camille carina carl carla carlos carmen carol carolin carolina caroline catherine cecile
        celine cesar chantal charles charlotte chloe chris christa christian christiane christina christine christoph christophe christopher cindy claire clara claude
        claudia clemens colin connor corinna cornelia craig cristina cynthia daniel daniela danielle danuta dave david deborah debra denis denise dennis derek diana
        diane diego dieter dirk dmitri dominik dominique donald donna dorothea dorothy doris douglas edith eduardo edward eileen elena elfriede elisa elisabeth elise elizabeth
        elke ella ellen elodie elsa emil emily emma emmanuel enrique eric erica erik erika erin ernst esther eugene eva evelyn fabian fabio fatima felix fernando florian
        francis francisco franck francois frank franz fred frederic frederick friedrich fritz gabriel gabriela gabriele gareth gary genevieve george georg gerald
        gerard gerd gerhard gertrud giovanni gisela giulia giuseppe gloria gordon gregor gregory gudrun guillaume gustavo guy hannah hannes hans harald harry
        hassan heather heidi heike heiko heinrich heinz helen helena helene helga helmut henri henrik henry herbert hermann hilde holger horst hubert hugo ian ibrahim
        ines inge ingo ingrid irene irina isabel isabella isabelle ivan jaime jake jakob james jan jana jane janet janina jason javier jean jeanne jeff jeffrey jennifer jens
        jeremy jerome jessica jesus jim joachim joan joanna joanne jochen joe joel joerg johan johann johanna johannes john jonas jonathan jorge jose josef joseph joshua juan
        judith juergen julia julian juliane julie julien justin justyna kai karen karin karl karla karsten katarzyna kate katharina katherine kathleen kathrin katja
        katrin keith kelly ken kenneth kerstin kevin kim klaus konrad krzysztof kurt laetitia lars laura laurence laurent lea lena leo leon leonie leslie liam linda lisa
        liz lorena lorenzo louis louise luca lucas lucia luis luisa lukas luke lutz magdalena malgorzata manfred manuel manuela marc marcel marcin marco marcos
        marek margaret margit margot maria marianne marie mario marion marisa markus marlene marta martha martin martina martine mary mathias mathieu mathilde matt
        matteo matthew matthias maurice maximilian megan mehmet meike melanie melissa michael michaela michal michel michele michelle miguel mohamed mohammed moritz
        monica monika monique muhammad mustafa nadia nadine nancy natalia natalie nathalie nathan neil nicholas nick nicola nicolas nicole niklas nikolaus nils nina noah
        nora norbert olaf olga oliver olivia olivier omar otto pablo pamela pascal patricia patrick patrizia paul paula pauline pawel pedro peter petra philip philipp
        philippe pierre piotr rachel rafael raimund rainer ralf ramon raphael raul rebecca regina reinhard renate renee ricardo richard rita robert roberto
        roger roland rolf roman romain ronald rosa rosemarie ruben rudolf ruth ryan sabine sabrina samantha samuel sandra sandrine sara sarah scott sean sebastian
        sebastien sergio sharon sheila sigrid silke silvia simon simone sofia sonia sonja sophia sophie stefan stefanie stephan stephane stephanie stephen steve
        steven susan susana susanne suzanne sven svenja sylvia sylvie tanja tanya tatjana teresa theo theresa therese thierry thomas thorsten tim timothy tina
        tobias tom tomas tomasz tony torsten tracy ulrich ulrike ursula ute uwe valentin valerie vanessa vera veronica veronika veronique vincent viktor viktoria virginie
        vladimir volker walter waltraud wendy werner wilhelm william wolfgang xavier yannick yasmin yusuf yves yvonne zoe
        """;

    private const string Family = """
        adams ahmed alvarez anderson andersson bauer becker bernard bianchi brown campbell castillo castro clark clarke collins davies davis diaz dominguez dubois dupont
        durand edwards evans fernandez ferrari fischer flores fournier garcia gomez gonzales gonzalez green gutierrez hansen harris hernandez hill hoffmann hughes ivanov
        jackson jansen jensen jimenez johansson johnson jones kaya keller khan klein koch kovac kowalski kumar lambert laurent lefebvre lehmann leroy lewis
        lopez maier martinez mayer meier mendez meyer miller mitchell molina moore morales moreau moreno morgan morris mueller munoz murphy navarro neumann nguyen nielsen
        nowak ortega ortiz patel perez petersen peterson petrov phillips popescu ramirez ramos reyes richter rivera roberts robinson rodrigues rodriguez rojas romero rossi
        roux ruiz russo sanchez santos schaefer schmid schmidt schmitt schneider schroeder schubert schulz schulze schwarz silva simmons singh smith smirnov sousa suarez
        tanaka taylor thompson torres turner vargas vazquez wagner watson weber werner williams wilson wojcik wolff wright yilmaz zimmermann
        """;

    private static readonly HashSet<string> Known = Folded();

    /// <summary>Whether a word is one of them, whatever its case and accents.</summary>
    public static bool Contains(string word) => word.Length is >= 2 and <= 20 && Known.Contains(TextFold.Fold(word));

    // Umlauts are written in two ways; both are known.
    private static HashSet<string> Folded() => (Given + " " + Family).Split([' ', '\n', '\r'], StringSplitOptions.RemoveEmptyEntries)
        .SelectMany(name => new[] { name, name.Replace("ue", "u", StringComparison.Ordinal).Replace("oe", "o", StringComparison.Ordinal).Replace("ae", "a", StringComparison.Ordinal) })
        .ToHashSet(StringComparer.Ordinal);
}
