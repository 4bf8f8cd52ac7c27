package org.scrubline.casework.web;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.function.Predicate;
import org.scrubline.casework.Part;
import org.scrubline.casework.SurgicalCase;
import org.scrubline.people.People;
import org.scrubline.people.Person;
import org.scrubline.people.Site;
import org.scrubline.platform.Role;
import org.scrubline.platform.Wording;
import org.scrubline.rubric.ComplexityFactor;
import org.scrubline.rubric.PublishedRubric;
import org.scrubline.rubric.RubricLibrary;
import org.scrubline.rubric.Rubrics;
import org.springframework.context.i18n.LocaleContextHolder;
import org.springframework.stereotype.Component;

/** Says the values of a case in words, and lists what can be chosen. */
@Component
class CaseWords {

    private final Wording wording;
    private final People people;
    private final Rubrics rubrics;
    private final RubricLibrary library;

    CaseWords(Wording wording, People people, Rubrics rubrics, RubricLibrary library) {
        this.wording = wording;
        this.people = people;
        this.rubrics = rubrics;
        this.library = library;
    }

    String say(String key, Object... arguments) {
        return wording.text(key, arguments);
    }

    /** A constant's words: the name of its type, then its own. */
    String say(Enum<?> constant) {
        return wording.text("case.word." + constant.getDeclaringClass().getSimpleName() + "." + constant.name());
    }

    String procedure(String code) {
        return rubrics.current(code).rubric().title();
    }

    /** Whether the visits after it say how the operation went. */
    boolean judgedByOutcome(SurgicalCase found) {
        String performed = found.convertedTo() == null ? found.procedureCode() : found.convertedTo();
        return rubrics.current(performed).rubric().family().judgedByOutcome();
    }

    /** When the case ended by its site's clock, or that it is planned. */
    String when(SurgicalCase found) {
        Instant ended = found.endedAt();
        ZoneId zone = found.endedZone();
        if (ended == null || zone == null) {
            return switch (found.state()) {
                case PLANNED -> planned(found);
                case STARTED -> say("case.started");
                case ENDED, ABANDONED -> say("case.never-ended");
            };
        }
        return when(ended, zone);
    }

    /** An instant by the clock of a zone. */
    String when(Instant at, ZoneId zone) {
        return DateTimeFormatter.ofPattern("d MMM uuuu, HH:mm z", LocaleContextHolder.getLocale())
                .format(at.atZone(zone));
    }

    private String planned(SurgicalCase found) {
        LocalDate day = found.plannedOn();
        return day == null ? say("case.planned") : say("case.planned.on", day(day));
    }

    /** A day with its weekday. */
    static String day(LocalDate day) {
        return DateTimeFormatter.ofPattern("EEE d MMM uuuu", LocaleContextHolder.getLocale())
                .format(day);
    }

    String site(UUID id) {
        return people.site(id).map(Site::name).orElse("");
    }

    /** A factor with its points. */
    String factor(String code) {
        ComplexityFactor factor = library.complexity().factor(code);
        return say("case.factor", factor.name(), points(factor));
    }

    List<Option> factors() {
        return library.complexity().factors().stream()
                .map(factor -> new Option(factor.code(), factor.name(), points(factor)))
                .toList();
    }

    private String points(ComplexityFactor factor) {
        String points = say("case.factor.points", factor.technicalPoints());
        return factor.stakes() ? say("case.factor.stakes", points) : points;
    }

    List<Option> procedures() {
        Set<String> taking = rubrics.takingCases();
        return rubrics.inForce().stream()
                .map(PublishedRubric::rubric)
                .filter(rubric -> taking.contains(rubric.procedure()))
                .map(rubric -> Option.of(rubric.procedure(), rubric.title()))
                .toList();
    }

    List<Option> sites() {
        return people.sites().stream()
                .map(site -> new Option(site.id().toString(), name(site), null))
                .toList();
    }

    private String name(Site site) {
        return site.closedOn() == null
                ? site.name()
                : say("case.site.closed", site.name(), String.valueOf(site.closedOn()));
    }

    List<Option> holding(UUID programme, Role role, Predicate<Person> wanted) {
        return people.holding(programme, role).stream()
                .filter(wanted)
                .map(person -> Option.of(person.id(), person.printedName()))
                .toList();
    }

    /** A trainee's part in a case that is over, or in one still ahead. */
    String part(Part part, boolean ahead) {
        return ahead ? say("case.part.ahead." + part) : say(part);
    }

    List<Option> parts(boolean ahead) {
        return Arrays.stream(Part.values())
                .map(part -> Option.of(part.name(), part(part, ahead)))
                .toList();
    }

    <E extends Enum<E>> List<Option> choices(Class<E> kind) {
        return Arrays.stream(kind.getEnumConstants())
                .map(constant -> Option.of(constant.name(), say(constant)))
                .toList();
    }
}
