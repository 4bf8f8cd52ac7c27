package org.scrubline.demo;

import java.util.List;
import java.util.Map;
import org.scrubline.platform.Role;

/** Everyone in the demo programme. Any likeness to a living person is accidental. */
final class DemoCast {

    static final String ORGANISATION = "Norrvale Health Region";
    static final String PROGRAMME = "Norrvale Filtration Surgery Programme";
    static final String ZONE = "Europe/Copenhagen";

    /** Code and name. */
    static final Map<String, String> SITES = Map.of(
            "OEI", "Sankt Orlin Eye Institute",
            "BVD", "Bracken Vale District",
            "MUH", "Meridan University Hospital");

    /**
     * A supervisor's way of scoring.
     *
     * @param offset added to every level, in levels
     * @param spread factor on the distance from the usual level; 1 uses the whole scale
     * @param halo share of a level that follows the impression of the whole case, 0 to 1
     * @param hours typical hours from the end of a case to the signature
     */
    record Supervisor(
            String username, String name, String site, double offset, double spread, double halo, double hours) {}

    /**
     * A trainee's way of learning, in levels: from {@code start} toward {@code ceiling}, two thirds of the way after
     * {@code pace} cases.
     *
     * @param weak levels added to single steps, by step code
     * @param cases signed fornix-based cases in the demo
     * @param selfBias levels the trainee adds when scoring the own steps
     */
    record Trainee(
            String username,
            String name,
            double start,
            double ceiling,
            double pace,
            Map<String, Double> weak,
            int cases,
            double selfBias) {}

    /** Someone with another role. */
    record Member(String username, String name, Role role) {}

    static final List<Supervisor> SUPERVISORS = List.of(
            new Supervisor("brannock", "Dr Ottilie Brannock", "OEI", 0, 1, .3, 2),
            new Supervisor("vantrelle", "Dr Hesper Vantrelle", "OEI", -.55, 1, .3, 5),
            new Supervisor("quorral", "Dr Ines Quorral", "OEI", 0, .9, .45, 150),
            new Supervisor("karsenmark", "Dr Ludo Karsenmark", "BVD", .5, .95, .35, 4),
            new Supervisor("estavane", "Dr Ruy Estavane", "BVD", .05, .35, .45, 8),
            new Supervisor("tolvarin", "Dr Anneke Tolvarin", "MUH", .15, 1, .8, 3));

    static final List<Trainee> TRAINEES = List.of(
            new Trainee("travard", "Emeka Travard", 2.4, 4.8, 9, Map.of(), 19, 0),
            new Trainee("hallinor", "Fenna Hallinor", 2.2, 4.5, 14, Map.of(), 17, 0),
            new Trainee(
                    "nkolaris", "Hadi Nkolaris", 2.3, 4.55, 13, Map.of("TF09", -.9, "TF08", -.5, "TF12", -.3), 16, 0),
            new Trainee(
                    "balcairn", "Kavi Balcairn", 2.3, 4.5, 16, Map.of("TF03", -.9, "TF16", -.7, "TF04", -.4), 7, .2),
            new Trainee("draymoor", "Mirela Draymoor", 2.1, 4.4, 20, Map.of(), 3, -.6));

    static final List<Member> OTHERS = List.of(
            new Member("delmarr", "Dr Corisande Delmarr", Role.DIRECTOR),
            new Member("quillmere", "Prof Thaddeus Quillmere", Role.COMMITTEE_MEMBER),
            new Member("brevonne", "Ms Asta Brevonne", Role.COMMITTEE_MEMBER),
            new Member("ormandine", "Pell Ormandine", Role.ADMINISTRATOR),
            new Member("callavere", "Dr Rhosyn Callavere", Role.VISITOR),
            new Member("oderlake", "Tamsin Oderlake", Role.ANALYST));

    private DemoCast() {}
}
