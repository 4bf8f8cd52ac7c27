package org.scrubline.signoff;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.scrubline.casework.CaseVerdict;
import org.scrubline.casework.RecordedEvent;
import org.scrubline.casework.Sheet;
import org.scrubline.casework.SurgicalCase;
import org.scrubline.people.People;
import org.scrubline.people.Person;
import org.scrubline.people.Site;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.rubric.EventCatalogue;
import org.scrubline.rubric.PublishedRubric;
import org.scrubline.rubric.Rubric;
import org.scrubline.rubric.RubricLibrary;
import org.scrubline.rubric.Step;
import org.scrubline.signoff.SheetContent.CaseFacts;
import org.scrubline.signoff.SheetContent.EventLine;
import org.scrubline.signoff.SheetContent.MeasureLine;
import org.scrubline.signoff.SheetContent.Named;
import org.scrubline.signoff.SheetContent.Replaces;
import org.scrubline.signoff.SheetContent.RubricUsed;
import org.scrubline.signoff.SheetContent.Signer;
import org.scrubline.signoff.SheetContent.StepLine;
import org.scrubline.signoff.SheetContent.VerdictLine;
import org.springframework.context.MessageSource;
import org.springframework.stereotype.Component;

/** Gathers what a signature would cover from where it is kept. */
@Component
class ContentWriter {

    static final String MEANING = "signoff.meaning.observed";
    private static final String MEANING_OF_VERSION = "signoff.meaning.version.";

    private final People people;
    private final ReplacedVersions replaced;
    private final EventCatalogue catalogue;
    private final MessageSource messages;

    ContentWriter(People people, ReplacedVersions replaced, RubricLibrary library, MessageSource messages) {
        this.people = people;
        this.replaced = replaced;
        this.catalogue = library.events();
        this.messages = messages;
    }

    SheetContent write(SignedIn scorer, SurgicalCase operation, Sheet sheet, PublishedRubric published) {
        Rubric rubric = published.rubric();
        Replaces replaces = replaced.by(sheet);
        return new SheetContent(
                SheetContent.SCHEMA,
                sheet.id(),
                sheet.versionNo(),
                new Named(scorer.tenantId(), scorer.organisationName()),
                new RubricUsed(
                        published.id(), rubric.procedure(), rubric.title(), rubric.version(), published.contentHash()),
                caseFacts(operation),
                new Named(
                        sheet.traineeId(),
                        people.person(sheet.traineeId())
                                .map(Person::printedName)
                                .orElseThrow(NotFound::new)),
                sheet.confirmedPart(),
                sheet.givenSupervision(),
                rubric.steps().stream().map(step -> line(step, sheet)).toList(),
                measures(rubric, sheet),
                sheet.events().stream().map(this::event).toList(),
                sheet.strength(),
                sheet.nextStep(),
                VerdictLine.of(CaseVerdict.of(rubric, catalogue, sheet)),
                sheet.firstScoredAt(),
                replaces,
                signer(scorer, replaces));
    }

    private static StepLine line(Step step, Sheet sheet) {
        StepLine line = StepLine.of(step.code(), step.critical(), sheet.step(step.code()));
        return sheet.inBulk().contains(step.code()) ? line.together() : line;
    }

    private CaseFacts caseFacts(SurgicalCase operation) {
        return new CaseFacts(
                operation.id(),
                operation.programmeId(),
                operation.reference(),
                operation.procedureCode(),
                operation.eye(),
                people.site(operation.siteId()).map(Site::code).orElseThrow(NotFound::new),
                operation.endedAt(),
                operation.endedZone(),
                operation.plannedSupervision(),
                operation.factors().stream().sorted().toList(),
                operation.band(),
                operation.complexitySetLate());
    }

    private static List<MeasureLine> measures(Rubric rubric, Sheet sheet) {
        return rubric.steps().stream()
                .flatMap(step -> step.measures().stream()
                        .flatMap(measure -> Optional.ofNullable(sheet.measures().get(measure.code()))
                                .map(value -> new MeasureLine(
                                        step.code(),
                                        measure.code(),
                                        value.stripTrailingZeros().toPlainString()))
                                .stream()))
                .toList();
    }

    private EventLine event(RecordedEvent event) {
        return new EventLine(
                event.eventCode(),
                event.stepCode(),
                event.reason(),
                catalogue.blocks(event.eventCode(), event.reason()),
                event.actionTaken());
    }

    /** The meaning is signed in the one language records are kept in, whatever the reader's. */
    private Signer signer(SignedIn scorer, @Nullable Replaces replaces) {
        String meaning = replaces == null
                ? MEANING
                : MEANING_OF_VERSION + replaces.basis().name();
        return new Signer(
                scorer.personId(),
                scorer.printedName(),
                Role.SUPERVISOR.name(),
                meaning,
                messages.getMessage(meaning, null, Locale.ENGLISH));
    }
}
