package org.scrubline.progress.web;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.scrubline.casework.FocusSteps.Focus;
import org.scrubline.casework.PlannedCase;
import org.scrubline.casework.SurgicalCase;
import org.scrubline.platform.Wording;
import org.scrubline.progress.ListedCase;
import org.scrubline.rubric.RubricLibrary;
import org.scrubline.rubric.Rubrics;
import org.scrubline.rubric.Step;
import org.springframework.context.i18n.LocaleContextHolder;
import org.springframework.stereotype.Component;

/** Puts the list of the next day into words. */
@Component
class ListPages {

    private final Rubrics rubrics;
    private final RubricLibrary library;
    private final Wording wording;

    ListPages(Rubrics rubrics, RubricLibrary library, Wording wording) {
        this.rubrics = rubrics;
        this.library = library;
        this.wording = wording;
    }

    /**
     * The page.
     *
     * @param own whether the reader is the trainee of these cases
     */
    ListPage page(List<ListedCase> cases, boolean own) {
        Map<LocalDate, List<ListPage.Listed>> days = new LinkedHashMap<>();
        List<ListPage.Line> later = new ArrayList<>();
        for (ListedCase one : cases) {
            LocalDate day = one.planned().surgicalCase().plannedOn();
            if (day != null && one.evidence().isPresent()) {
                days.computeIfAbsent(day, any -> new ArrayList<>())
                        .add(listed(one.planned(), one.evidence().get(), own));
            } else {
                later.add(line(one.planned(), day, own));
            }
        }
        return new ListPage(
                days.entrySet().stream()
                        .map(day -> new ListPage.Day(day(day.getKey()), day.getValue()))
                        .toList(),
                later);
    }

    private ListPage.Line line(PlannedCase planned, @Nullable LocalDate day, boolean own) {
        return new ListPage.Line(
                href(planned),
                title(planned, own),
                wording.text(
                        "list.later.note",
                        planned.surgicalCase().reference(),
                        day == null ? wording.text("list.no-day") : day(day)));
    }

    private ListPage.Listed listed(PlannedCase planned, ListedCase.Evidence evidence, boolean own) {
        SurgicalCase found = planned.surgicalCase();
        return new ListPage.Listed(
                href(planned),
                title(planned, own),
                wording.text(
                        "list.note",
                        found.reference(),
                        wording.text("list.eye." + found.eye()),
                        found.band(),
                        wording.text("list.part." + planned.part()),
                        planned.scorerName()),
                found.factors().stream()
                        .map(code -> library.complexity().factor(code).name())
                        .toList(),
                wording.text("list.may", wording.text("list.supervision." + found.plannedSupervision())),
                past(found, evidence),
                planned.goal(),
                evidence.focus().stream().map(focus -> step(found, focus)).toList(),
                few(evidence));
    }

    private List<String> past(SurgicalCase found, ListedCase.Evidence evidence) {
        List<String> past = new ArrayList<>();
        past.add(wording.text("list.cases", evidence.operated()));
        past.add(wording.text("list.signed", evidence.signed(), evidence.scorers()));
        if (evidence.lastAt() == null || evidence.sinceLast() == null) {
            past.add(wording.text("list.first"));
        } else {
            past.add(wording.text(
                    "list.last",
                    date(evidence.lastAt(), found),
                    evidence.sinceLast().toDays()));
        }
        if (evidence.gap()) {
            past.add(wording.text("list.gap"));
        }
        return past;
    }

    private ListPage.Step step(SurgicalCase found, Focus focus) {
        return new ListPage.Step(
                focus.step().name(),
                wording.text("list.step", focus.high(), focus.scored(), date(focus.lastAt(), found)),
                focus.step().coaching());
    }

    private String few(ListedCase.Evidence evidence) {
        if (evidence.signed() == 0) {
            return wording.text("list.nothing");
        }
        return evidence.few().isEmpty()
                ? ""
                : wording.text(
                        "list.few", evidence.few().stream().map(Step::name).collect(Collectors.joining(", ")));
    }

    private String title(PlannedCase planned, boolean own) {
        String procedure =
                rubrics.current(planned.surgicalCase().procedureCode()).rubric().title();
        return own ? procedure : wording.text("list.case", planned.traineeName(), procedure);
    }

    private static String href(PlannedCase planned) {
        return "/cases/" + planned.surgicalCase().id();
    }

    private static String date(Instant at, SurgicalCase found) {
        ZoneId zone = found.endedZone();
        return format("d MMM uuuu").format(at.atZone(zone == null ? ZoneOffset.UTC : zone));
    }

    private static String day(LocalDate day) {
        return format("EEEE d MMMM").format(day);
    }

    private static DateTimeFormatter format(String pattern) {
        return DateTimeFormatter.ofPattern(pattern, LocaleContextHolder.getLocale());
    }
}
