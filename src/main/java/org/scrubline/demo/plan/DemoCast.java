package org.scrubline.demo.plan;

import static org.scrubline.rubric.Procedures.DEEP_SCLERECTOMY;
import static org.scrubline.rubric.Procedures.DRAINAGE_DEVICE;
import static org.scrubline.rubric.Procedures.GEL_STENT;
import static org.scrubline.rubric.Procedures.NEEDLING;
import static org.scrubline.rubric.Procedures.POSTOP_CARE;
import static org.scrubline.rubric.Procedures.TRAB_FORNIX;
import static org.scrubline.rubric.Procedures.TRAB_LIMBUS;

import java.time.ZoneId;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;
import org.scrubline.people.Characteristic;
import org.scrubline.platform.Role;

/** Everyone and every place in the demo programme. Any likeness to a living person or a real place is accidental. */
public final class DemoCast {

    public static final String ORGANISATION = "Norrvale Health Region";
    public static final String PROGRAMME = "Norrvale Filtration Surgery Programme";
    public static final ZoneId ZONE = ZoneId.of("Europe/Copenhagen");

    /** Months the plan runs. */
    public static final int MONTHS = 24;

    /** Last month of the supervisor who leaves, and who that is. */
    public static final int LEAVING_MONTH = 20;

    public static final String LEAVING = "S07";

    /** The trainee away in the middle of the plan, the first and last month of that, and the one at a share of full time. */
    public static final String AWAY = "T07";

    public static final int AWAY_FROM = 10;

    public static final int AWAY_UNTIL = 15;

    public static final String PART_TIME = "T14";

    public static final int PART_TIME_SHARE = 60;

    /** A trainee and a supervisor who declared a conflict: one never scores the other. */
    public static final String CONFLICT_TRAINEE = "T10";

    public static final String CONFLICT_SUPERVISOR = "S08";

    /** Scores the same case as another supervisor now and then, for comparison. */
    static final String REFERENCE = "S01";

    /**
     * A place with what is operated there.
     *
     * @param cases of each procedure, in the order of {@link #PROCEDURES}
     * @param bands per cent of the cases in band A, B, C and D
     */
    public record Place(String code, String name, List<Integer> cases, List<Integer> bands) {}

    /** Some months of a trainee at a place. */
    public record Posting(String site, int firstMonth, int lastMonth, int cases) {}

    /**
     * A trainee's way of learning, in levels: from {@code start} toward {@code ceiling}, two thirds of the way after
     * {@code pace} cases.
     *
     * @param weak levels added to single steps for as long as the plan runs, by step code
     * @param selfBias levels the trainee adds when scoring the own steps
     * @param earlier fornix-based cases declared from before the programme
     */
    public record Trainee(
            String id,
            String username,
            String name,
            List<Posting> postings,
            double start,
            double ceiling,
            double pace,
            Map<String, Double> weak,
            double selfBias,
            int earlier) {

        /** Of the last posting, counted from 1. */
        public int lastMonth() {
            return postings.get(postings.size() - 1).lastMonth();
        }
    }

    /** How a supervisor words the feedback. */
    enum Wording {
        BALANCED,
        RICH,
        SHORT,
        SPARSE
    }

    /**
     * A supervisor's way of scoring.
     *
     * @param site where this supervisor works; empty for one who visits all
     * @param share weight among the supervisors of the site
     * @param offset added to every level, in levels
     * @param spread factor on the distance from the usual level; 1 uses the whole scale
     * @param halo share of a level that follows the impression of the whole case, 0 to 1
     * @param ownView standard deviation of the impression of single trainees, in levels
     * @param hours typical hours from the end of a case to the signature
     */
    public record Supervisor(
            String id,
            String username,
            String name,
            String site,
            double share,
            double offset,
            double spread,
            double halo,
            double ownView,
            double hours,
            Wording wording) {}

    /** Someone with another role. */
    public record Member(String username, String name, Role role) {}

    static final List<String> PROCEDURES =
            List.of(TRAB_FORNIX, TRAB_LIMBUS, DRAINAGE_DEVICE, DEEP_SCLERECTOMY, GEL_STENT, NEEDLING, POSTOP_CARE);

    public static final List<Place> PLACES = List.of(
            new Place(
                    "OEI", "Sankt Orlin Eye Institute", List.of(150, 12, 112, 38, 52, 36, 30), List.of(30, 33, 25, 12)),
            new Place("BVD", "Bracken Vale District", List.of(165, 20, 24, 0, 14, 37, 30), List.of(52, 32, 13, 3)),
            new Place("MUH", "Meridan University Hospital", List.of(85, 4, 26, 8, 12, 25, 20), List.of(40, 32, 20, 8)));

    public static final List<Supervisor> SUPERVISORS = List.of(
            supervisor("S01", "Dr Ottilie Brannock", "OEI", 16, 0, 1, .30, .15, 2, Wording.BALANCED),
            supervisor("S02", "Dr Hesper Vantrelle", "OEI", 14, -.55, 1, .30, .20, 5, Wording.RICH),
            supervisor("S03", "Dr Ludo Karsenmark", "BVD", 15, .50, .95, .35, .20, 4, Wording.SHORT),
            supervisor("S04", "Dr Anneke Tolvarin", "MUH", 11, .15, 1, .80, .20, 3, Wording.BALANCED),
            supervisor("S05", "Dr Ruy Estavane", "BVD", 12, .05, .35, .45, .20, 8, Wording.BALANCED),
            supervisor("S06", "Dr Ines Quorral", "OEI", 13, 0, .90, .45, .20, 216, Wording.SHORT),
            supervisor("S07", "Dr Tobias Wrenfeld", "MUH", 9, -.30, 1, .25, .20, 6, Wording.RICH),
            supervisor("S08", "Dr Mirembe Astolane", "BVD", 7, .30, .90, .40, .20, 5, Wording.BALANCED),
            supervisor("S09", "Dr Gael Ostervane", "", 0, .10, 1.1, .30, .60, 30, Wording.SPARSE));

    public static final List<Trainee> TRAINEES = List.of(
            trainee("T01", "Aldis Varnholt", "O27 M31", 1, 3.3, 4.6, 30, Map.of(), 0, 24),
            trainee("T02", "Brisa Tekmor", "B27 O27", 1, 3.2, 3.75, 12, Map.of(), 0, 22),
            trainee("T03", "Corvin Adelay", "B18 B18", 1, 3.6, 4.7, 25, Map.of(), 0, 28),
            trainee("T04", "Dinah Osquell", "M30 O26", 1, 3.4, 4.5, 25, afterTheatre(), 0, 26),
            trainee("T05", "Emeka Travard", "O22 B26 O27 O27", 1, 2.4, 4.8, 18, Map.of(), 0, 0),
            trainee("T06", "Fenna Hallinor", "B21 O24 M27 O24", 1, 2.2, 4.5, 32, Map.of(), 0, 0),
            new Trainee(
                    "T07",
                    "pelgrove",
                    "Greta Pelgrove",
                    List.of(
                            new Posting("OEI", 1, 6, 20),
                            new Posting("OEI", 7, 9, 12),
                            new Posting("BVD", 16, 18, 12),
                            new Posting("OEI", 19, 24, 22)),
                    2.3,
                    4.5,
                    28,
                    Map.of(),
                    0,
                    0),
            trainee(
                    "T08",
                    "Hadi Nkolaris",
                    "O22 M28 B25 O23",
                    1,
                    2.3,
                    4.55,
                    30,
                    Map.of("TF09", -.9, "TF08", -.5, "TF12", -.3),
                    0,
                    0),
            trainee("T09", "Iolo Sorrendi", "B19 O22 O23 M24", 1, 1.9, 4.5, 48, Map.of(), 0, 0),
            trainee("T10", "Junia Ishimar", "O25 B29", 13, 2.2, 4.5, 32, Map.of(), 0, 0),
            trainee(
                    "T11",
                    "Kavi Balcairn",
                    "B24 O28",
                    13,
                    2.3,
                    4.5,
                    30,
                    Map.of("TF03", -.9, "TF16", -.7, "TF04", -.4),
                    0,
                    0),
            trainee("T12", "Lorenz Quellan", "O29 B33", 13, 2.4, 4.5, 30, Map.of("TF18", -.8, "TF12", -.4), .8, 0),
            trainee("T13", "Mirela Draymoor", "M22 B22", 13, 2.1, 4.4, 36, Map.of(), -.6, 0),
            trainee("T14", "Noor Ferrowe", "B16 M18", 13, 2.2, 4.5, 30, Map.of(), 0, 0));

    public static final List<Member> OTHERS = List.of(
            new Member("delmarr", "Dr Corisande Delmarr", Role.DIRECTOR),
            new Member("quillmere", "Prof Thaddeus Quillmere", Role.COMMITTEE_MEMBER),
            new Member("brevonne", "Ms Asta Brevonne", Role.COMMITTEE_MEMBER),
            new Member("ormandine", "Pell Ormandine", Role.ADMINISTRATOR),
            new Member("callavere", "Dr Rhosyn Callavere", Role.VISITOR),
            new Member("oderlake", "Tamsin Oderlake", Role.ANALYST));

    /** What trainees said about themselves, by answer; the others said nothing. No group is large enough to be shown. */
    private static final Map<Characteristic, Map<String, List<String>>> SAID = Map.of(
            Characteristic.GENDER,
            Map.of("WOMAN", List.of("T02", "T04", "T06", "T07"), "MAN", List.of("T01", "T03", "T05", "T08")),
            Characteristic.AGE,
            Map.of(
                    "UNDER_30", List.of("T05", "T06", "T10", "T11"),
                    "FROM_30", List.of("T07", "T08", "T12", "T13"),
                    "FROM_35", List.of("T09")),
            Characteristic.QUALIFIED,
            Map.of("HERE", List.of("T01", "T06", "T08", "T10"), "ELSEWHERE", List.of("T02", "T09", "T13")));

    private static final int HALF_YEAR = 6;

    private DemoCast() {}

    public static Trainee trainee(String id) {
        return TRAINEES.stream().filter(one -> one.id().equals(id)).findFirst().orElseThrow();
    }

    /** What one trainee said; what they did not say is absent. */
    public static Map<Characteristic, String> said(String id) {
        Map<Characteristic, String> said = new EnumMap<>(Characteristic.class);
        SAID.forEach((characteristic, answers) -> answers.forEach((answer, trainees) -> {
            if (trainees.contains(id)) {
                said.put(characteristic, answer);
            }
        }));
        return said;
    }

    public static Supervisor supervisor(String id) {
        return SUPERVISORS.stream()
                .filter(one -> one.id().equals(id))
                .findFirst()
                .orElseThrow();
    }

    /** One level less in every step after the theatre, in clinic. */
    private static Map<String, Double> afterTheatre() {
        return Map.of(
                "PC01", -.9, "PC02", -.9, "PC03", -.9, "PC04", -.9, "PC05", -.9, "PC06", -.9, "PC07", -.9, "PC08", -.9);
    }

    private static Supervisor supervisor(
            String id,
            String name,
            String site,
            double share,
            double offset,
            double spread,
            double halo,
            double ownView,
            double hours,
            Wording wording) {
        return new Supervisor(id, username(name), name, site, share, offset, spread, halo, ownView, hours, wording);
    }

    private static Trainee trainee(
            String id,
            String name,
            String halfYears,
            int firstMonth,
            double start,
            double ceiling,
            double pace,
            Map<String, Double> weak,
            double selfBias,
            int earlier) {
        return new Trainee(
                id,
                username(name),
                name,
                postings(halfYears, firstMonth),
                start,
                ceiling,
                pace,
                weak,
                selfBias,
                earlier);
    }

    /** Reads "O27 M31": 27 cases at the place with that first letter, then 31 at the next, half a year each. */
    private static List<Posting> postings(String halfYears, int firstMonth) {
        List<String> words = List.of(halfYears.split(" "));
        return Stream.iterate(0, i -> i < words.size(), i -> i + 1)
                .map(i -> posting(words.get(i), firstMonth + i * HALF_YEAR))
                .toList();
    }

    private static Posting posting(String word, int firstMonth) {
        String site = PLACES.stream()
                .map(Place::code)
                .filter(code -> code.charAt(0) == word.charAt(0))
                .findFirst()
                .orElseThrow();
        return new Posting(site, firstMonth, firstMonth + HALF_YEAR - 1, Integer.parseInt(word.substring(1)));
    }

    private static String username(String name) {
        return name.substring(name.lastIndexOf(' ') + 1).toLowerCase(Locale.ROOT);
    }
}
