package org.scrubline.access;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.scrubline.casework.DeviceCaseFixture;
import org.scrubline.casework.OpenSheet;
import org.scrubline.casework.SheetChange;
import org.scrubline.casework.SheetFixture.Theatre;
import org.scrubline.casework.Sheets;
import org.scrubline.casework.StepState;
import org.scrubline.casework.reference.ReferenceCases;
import org.scrubline.casework.reference.ReferenceDraft;
import org.scrubline.committee.CommitteeFixture;
import org.scrubline.committee.CommitteeFixture.Board;
import org.scrubline.committee.Meeting;
import org.scrubline.entitlement.EntitlementLevel;
import org.scrubline.people.VisitorRequest;
import org.scrubline.people.Visitors;
import org.scrubline.platform.Passkeys;
import org.scrubline.platform.Role;
import org.scrubline.platform.ScrublineClock;
import org.scrubline.platform.SignedIn;
import org.scrubline.retention.Retention;
import org.scrubline.rubric.Procedures;
import org.scrubline.rubric.Rubrics;
import org.scrubline.signoff.RecordFixture;
import org.scrubline.signoff.SignedSheet;
import org.scrubline.support.History;
import org.scrubline.support.SoftwarePasskey;
import org.scrubline.support.TestOrganisations;
import org.scrubline.support.TestOrganisations.TestOrganisation;

/**
 * Records of one programme, the people they belong to, and people of every role in the same programme, in another one of
 * the organisation and in another organisation. Made by the tests that need it, since it asks for more than every context of
 * the tests has.
 */
class AccessWorld {

    /** In the printed names and texts of the programme's records and nowhere else. */
    static final String MARK = "Quillfeather";

    private final TestOrganisations organisations;
    private final Rubrics rubrics;
    private final History history;
    private final Sheets sheets;
    private final DeviceCaseFixture devices;
    private final RecordFixture acts;
    private final Retention retention;
    private final Visitors visitors;
    private final Passkeys passkeys;
    private final ReferenceCases references;
    private final CommitteeFixture committees;
    private final ScrublineClock clock;

    AccessWorld(
            TestOrganisations organisations,
            Rubrics rubrics,
            History history,
            Sheets sheets,
            DeviceCaseFixture devices,
            RecordFixture acts,
            Retention retention,
            Visitors visitors,
            Passkeys passkeys,
            ReferenceCases references,
            CommitteeFixture committees,
            ScrublineClock clock) {
        this.organisations = organisations;
        this.rubrics = rubrics;
        this.history = history;
        this.sheets = sheets;
        this.devices = devices;
        this.acts = acts;
        this.retention = retention;
        this.visitors = visitors;
        this.passkeys = passkeys;
        this.references = references;
        this.committees = committees;
        this.clock = clock;
    }

    /** The people and the records; {@code objects} by the names docs/access-matrix.csv uses. */
    record Built(Map<Relation, Map<Role, SignedIn>> people, Map<String, String> objects) {

        Optional<SignedIn> person(Relation relation, Role role) {
            return Optional.ofNullable(people.getOrDefault(relation, Map.of()).get(role));
        }
    }

    Built build() {
        TestOrganisation home = organisations.open();
        // First by name, so the second signature under each record is this supervisor's and nobody's of the matrix.
        home.join("Aldous " + MARK, Role.SUPERVISOR);
        Map<Relation, Map<Role, SignedIn>> people = new EnumMap<>(Relation.class);
        people.put(Relation.PROGRAMME, everyone(home, MARK));
        people.put(Relation.OTHER_PROGRAMME, everyone(home.anotherProgramme(), "Elsewhere"));
        people.put(Relation.OTHER_ORGANISATION, everyone(organisations.open(), "Abroad"));
        people.put(
                Relation.OWN,
                Map.of(
                        Role.SUPERVISOR, home.join("Ottilie " + MARK, Role.SUPERVISOR),
                        Role.TRAINEE, home.join("Fenna " + MARK, Role.TRAINEE),
                        Role.VISITOR, home.join("Rhosyn " + MARK, Role.VISITOR)));
        Map<String, String> objects = new Records(home, people).write();
        return new Built(people, objects);
    }

    private Map<Role, SignedIn> everyone(TestOrganisation organisation, String name) {
        Map<Role, SignedIn> people = new EnumMap<>(Role.class);
        for (Role role : Role.values()) {
            people.put(
                    role, organisation.join(role.name().charAt(0) + role.name().substring(1, 3) + " " + name, role));
        }
        if (organisation.in(rubrics::published).isEmpty()) {
            UUID publisher = people.get(Role.DIRECTOR).personId();
            organisation.in(() -> rubrics.publishLibrary(publisher).orThrow());
        }
        return people;
    }

    /** Writes one record of each kind. */
    private final class Records {

        private final TestOrganisation home;
        private final SignedIn supervisor;
        private final SignedIn trainee;
        private final SignedIn visitor;
        private final Map<Role, SignedIn> others;
        private final Theatre theatre;
        private final Instant ended = clock.instant().minus(Duration.ofDays(2));
        private final Map<String, String> objects = new HashMap<>();

        Records(TestOrganisation home, Map<Relation, Map<Role, SignedIn>> people) {
            this.home = home;
            Map<Role, SignedIn> own = people.get(Relation.OWN);
            this.supervisor = own.get(Role.SUPERVISOR);
            this.trainee = own.get(Role.TRAINEE);
            this.visitor = own.get(Role.VISITOR);
            this.others = people.get(Relation.PROGRAMME);
            this.theatre = new Theatre(home, supervisor, trainee);
        }

        Map<String, String> write() {
            objects.put("trainee", trainee.personId().toString());
            objects.put("person", supervisor.personId().toString());
            objects.put(
                    "rubric",
                    home.in(() -> rubrics.current(Procedures.TRAB_FORNIX)).id().toString());
            openSheet();
            objects.put(
                    "aside",
                    devices.aside(home, trainee, supervisor, clock.instant()).toString());
            SignedSheet signed = history.signed(home, trainee, supervisor, ended, Map.of("TF09", 2));
            objects.put("signed", signed.id().toString());
            objects.put("signed-sheet", signed.sheetId().toString());
            versions();
            SignedSheet contested = history.signed(home, trainee, supervisor, ended.minusSeconds(20_000), Map.of());
            objects.put(
                    "contest",
                    acts.contest(theatre, trainee, contested.id())
                            .orThrow()
                            .id()
                            .toString());
            SignedSheet disputed = history.signed(home, trainee, supervisor, ended.minusSeconds(40_000), Map.of());
            acts.askVoid(theatre, supervisor, disputed.id()).orThrow();
            objects.put("void-asked", disputed.id().toString());
            aroundTheRecords();
            return objects;
        }

        private void openSheet() {
            UUID sheet =
                    history.waiting(home, trainee, supervisor, clock.instant().minus(Duration.ofDays(1)));
            UUID caseId = home.in(() -> sheets.toScore(supervisor.personId())).stream()
                    .filter(open -> open.sheetId().equals(sheet))
                    .map(OpenSheet::surgicalCase)
                    .findFirst()
                    .orElseThrow()
                    .id();
            UUID closed =
                    history.waiting(home, trainee, supervisor, clock.instant().minus(Duration.ofDays(20)));
            objects.put("sheet", sheet.toString());
            objects.put("case", caseId.toString());
            objects.put("closed-sheet", closed.toString());
        }

        private void versions() {
            SignedSheet first = history.signed(home, trainee, supervisor, ended.minusSeconds(60_000), Map.of());
            SignedSheet second = acts.newVersion(
                    theatre, supervisor, first, new SheetChange.SetStep("TF09", new StepState.Scored(2)));
            objects.put("first-version", first.id().toString());
            objects.put("second-version", second.id().toString());
        }

        private void aroundTheRecords() {
            SignedIn director = others.get(Role.DIRECTOR);
            UUID programme = home.programme().id();
            objects.put(
                    "hold",
                    home.in(() -> retention.hold(
                                    director, programme, trainee.personId(), "A question about this record."))
                            .orThrow()
                            .id()
                            .toString());
            LocalDate today =
                    LocalDate.ofInstant(clock.instant(), home.programme().zone());
            VisitorRequest visit = new VisitorRequest(
                    visitor.personId(),
                    "A visit by " + MARK,
                    List.of(trainee.personId()),
                    List.of(),
                    today,
                    today.plusDays(5));
            objects.put(
                    "access",
                    home.in(() -> visitors.give(director, programme, visit))
                            .orThrow()
                            .id()
                            .toString());
            objects.put("reference", referenceCase(director, today).toString());
            committee();
            SoftwarePasskey.of(supervisor.accountId(), passkeys);
            objects.put(
                    "passkey", passkeys.of(supervisor.accountId()).get(0).id().toString());
        }

        private UUID referenceCase(SignedIn director, LocalDate today) {
            ReferenceDraft draft = new ReferenceDraft(
                    "REF-1",
                    "A film of " + MARK,
                    Procedures.TRAB_FORNIX,
                    "B",
                    "The teaching drive",
                    today.plusDays(5).toString());
            return home.in(() -> references.add(director, home.programme().id(), draft))
                    .orThrow()
                    .id();
        }

        private void committee() {
            SignedIn chair = others.get(Role.COMMITTEE_MEMBER);
            List<SignedIn> members = List.of(
                    chair,
                    home.join("Asta " + MARK, Role.COMMITTEE_MEMBER),
                    home.join("Ilse " + MARK, Role.COMMITTEE_MEMBER));
            Board board = new Board(
                    home,
                    others.get(Role.DIRECTOR),
                    chair,
                    members,
                    others.get(Role.ADMINISTRATOR),
                    trainee,
                    List.of(supervisor),
                    List.of());
            Meeting meeting = committees.open(board);
            objects.put("meeting", meeting.id().toString());
            objects.put("programme", home.programme().id().toString());
            objects.put(
                    "decision",
                    committees.decided(board, meeting, EntitlementLevel.E2).id().toString());
        }
    }
}
