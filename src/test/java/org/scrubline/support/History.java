package org.scrubline.support;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.scrubline.casework.CaseEntry;
import org.scrubline.casework.Cases;
import org.scrubline.casework.Eye;
import org.scrubline.casework.OpenSheet;
import org.scrubline.casework.Part;
import org.scrubline.casework.Sheet;
import org.scrubline.casework.SheetChange;
import org.scrubline.casework.Sheets;
import org.scrubline.casework.StepState;
import org.scrubline.casework.Supervision;
import org.scrubline.people.People;
import org.scrubline.people.Person;
import org.scrubline.platform.Role;
import org.scrubline.platform.ScrublineClock;
import org.scrubline.platform.SignedIn;
import org.scrubline.rubric.Procedures;
import org.scrubline.rubric.Rubrics;
import org.scrubline.rubric.Step;
import org.scrubline.signoff.RecordEvent;
import org.scrubline.signoff.SignedSheet;
import org.scrubline.signoff.SignedSheets;
import org.scrubline.signoff.Signing;
import org.scrubline.signoff.VersionSigning;
import org.scrubline.support.TestOrganisations.TestOrganisation;
import org.springframework.boot.test.context.TestComponent;

/** Writes the past of a trainee through the real services: cases logged, scored and signed when they happened. */
@TestComponent
public class History {

    /** Stands in for a level where the step was not seen. */
    public static final int NOT_SEEN = 0;

    private final Cases cases;
    private final Sheets sheets;
    private final Signing signing;
    private final Rubrics rubrics;
    private final People people;
    private final VersionSigning versions;
    private final SignedSheets signedSheets;
    private final ScrublineClock clock;

    public History(
            Cases cases,
            Sheets sheets,
            Signing signing,
            Rubrics rubrics,
            People people,
            VersionSigning versions,
            SignedSheets signedSheets,
            ScrublineClock clock) {
        this.people = people;
        this.versions = versions;
        this.signedSheets = signedSheets;
        this.cases = cases;
        this.sheets = sheets;
        this.signing = signing;
        this.rubrics = rubrics;
        this.clock = clock;
    }

    /**
     * A fornix-based trabeculectomy, every step at 4 but those named, signed two hours after its end and countersigned an
     * hour later where that is needed.
     */
    public SignedSheet signed(
            TestOrganisation organisation,
            SignedIn trainee,
            SignedIn scorer,
            Instant endedAt,
            Map<String, Integer> levels) {
        SignedSheet signed = signedAlone(organisation, trainee, scorer, endedAt, levels);
        return signed.marks().awaitingCountersignature() ? countersigned(organisation, signed) : signed;
    }

    private SignedSheet countersigned(TestOrganisation organisation, SignedSheet signed) {
        SignedIn second = organisation.in(() -> people.holding(signed.programmeId(), Role.SUPERVISOR)).stream()
                .map(Person::id)
                .filter(id -> !id.equals(signed.signerId()))
                .findFirst()
                .map(organisation::now)
                .orElseGet(() -> organisation.join("Silvan Orrery", Role.SUPERVISOR));
        VersionSigning.Said said =
                new VersionSigning.Said(RecordEvent.COUNTERSIGNED, signed.id(), signed.contentHash(), "");
        clock.at(
                signed.signedAt().plus(Duration.ofHours(1)),
                () -> organisation.in(
                        () -> versions.signWithoutCredential(second, said).orThrow()));
        return organisation.in(() -> signedSheets.byId(signed.id()).orElseThrow());
    }

    /** The same without the countersignature. */
    public SignedSheet signedAlone(
            TestOrganisation organisation,
            SignedIn trainee,
            SignedIn scorer,
            Instant endedAt,
            Map<String, Integer> levels) {
        return sign(organisation, scorer, waiting(organisation, trainee, scorer, endedAt), endedAt, levels);
    }

    /** Scores and signs a waiting sheet of a case that ended then. */
    public SignedSheet sign(
            TestOrganisation organisation, SignedIn scorer, UUID id, Instant endedAt, Map<String, Integer> levels) {
        return clock.at(
                endedAt.plus(Duration.ofHours(2)),
                () -> organisation.in(() -> {
                    Sheet sheet = sheets.openFor(scorer, id);
                    Sheet filled = sheets.change(scorer, id, sheet.lockVersion(), fill(levels))
                            .orThrow();
                    return signing.signWithoutCredential(scorer, filled.id()).orThrow();
                }));
    }

    /** A fornix-based trabeculectomy whose sheet nobody has touched. */
    public UUID waiting(TestOrganisation organisation, SignedIn trainee, SignedIn scorer, Instant endedAt) {
        return clock.at(
                endedAt.plus(Duration.ofHours(1)),
                () -> organisation.in(() -> {
                    UUID caseId = cases.log(trainee, entry(organisation, trainee, scorer, endedAt))
                            .orThrow()
                            .id();
                    return sheets.toScore(scorer.personId()).stream()
                            .filter(open -> open.surgicalCase().id().equals(caseId))
                            .map(OpenSheet::sheetId)
                            .findFirst()
                            .orElseThrow();
                }));
    }

    private CaseEntry entry(TestOrganisation organisation, SignedIn trainee, SignedIn scorer, Instant endedAt) {
        UUID programme = organisation.programme().id();
        return new CaseEntry(
                programme,
                trainee.personId(),
                scorer.personId(),
                organisation.site().id(),
                cases.proposeReference(programme),
                Procedures.TRAB_FORNIX,
                Eye.LEFT,
                Part.WHOLE_CASE,
                Supervision.SCRUBBED,
                List.of(),
                endedAt,
                organisation.site().zone(),
                null,
                null);
    }

    private SheetChange fill(Map<String, Integer> levels) {
        List<SheetChange> changes = new ArrayList<>();
        changes.add(new SheetChange.ConfirmRole(Part.WHOLE_CASE, Supervision.SCRUBBED));
        rubrics.current(Procedures.TRAB_FORNIX).rubric().steps().stream()
                .map(Step::code)
                .map(code -> new SheetChange.SetStep(code, state(levels.getOrDefault(code, 4))))
                .forEach(changes::add);
        return new SheetChange.All(changes);
    }

    private static StepState state(int level) {
        return level == NOT_SEEN ? new StepState.NotSeen() : new StepState.Scored(level);
    }
}
