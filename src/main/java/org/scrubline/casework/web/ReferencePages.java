package org.scrubline.casework.web;

import java.time.Instant;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.scrubline.casework.reference.ReferenceCase;
import org.scrubline.casework.reference.ReferenceCases;
import org.scrubline.casework.reference.ReferenceFile;
import org.scrubline.casework.reference.ReferenceList;
import org.scrubline.casework.reference.ReferenceScoring;
import org.scrubline.platform.FormView;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.TableView;
import org.scrubline.platform.TableView.Cell;
import org.scrubline.platform.TableView.Column;
import org.scrubline.rubric.Band;
import org.scrubline.rubric.Rubric;
import org.springframework.stereotype.Component;

/** Makes the pages of reference cases. */
@Component
class ReferencePages {

    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMM uuuu", Locale.UK);
    private static final DateTimeFormatter MOMENT = DateTimeFormatter.ofPattern("d MMM uuuu, HH:mm z", Locale.UK);
    private static final String LIST = "/reference-cases";

    private final CaseWords words;

    ReferencePages(CaseWords words) {
        this.words = words;
    }

    ReferenceListPage list(SignedIn who, ReferenceList list) {
        String programme = list.programme().id().toString();
        return new ReferenceListPage(
                programme,
                nav(who),
                list.programmes().stream()
                        .filter(one -> !one.id().equals(list.programme().id()))
                        .map(one -> new ReferenceListPage.Line(LIST + "?programme=" + one.id(), one.name(), null, null))
                        .toList(),
                list.files().stream()
                        .filter(ReferenceFile::scores)
                        .map(this::waiting)
                        .toList(),
                table(list),
                agreement(who, list),
                list.directs() ? choices(list.procedures()) : null);
    }

    private static String nav(SignedIn who) {
        return who.has(Role.SUPERVISOR) ? "my-scoring" : "cohort";
    }

    private ReferenceListPage.Line waiting(ReferenceFile file) {
        return new ReferenceListPage.Line(
                href(file.reference()),
                title(file.reference()),
                words.say(
                        "reference.waiting.note",
                        file.rubric().title(),
                        day(file.reference().closesOn())),
                null);
    }

    private TableView table(ReferenceList list) {
        return new TableView(
                columns("case", "procedure", "band", "state", "scorings", "own"),
                list.files().stream().map(this::row).toList());
    }

    private List<Column> columns(String... keys) {
        return Stream.of(keys)
                .map(key -> new Column(words.say("reference.column." + key), key.equals("scorings")))
                .toList();
    }

    private List<Cell> row(ReferenceFile file) {
        ReferenceCase reference = file.reference();
        return List.of(
                new Cell(title(reference), href(reference)),
                Cell.of(file.rubric().title()),
                Cell.of(reference.band().name()),
                Cell.of(state(file)),
                Cell.of(words.say("reference.scorings", file.scorings(), file.asked())),
                Cell.of(words.say(file.own() == null ? "reference.own.no" : "reference.own.yes")));
    }

    private String state(ReferenceFile file) {
        return file.closed() ? words.say("reference.closed") : words.say("reference.open", closes(file));
    }

    private static String closes(ReferenceFile file) {
        return day(file.reference().closesOn());
    }

    private List<ReferenceListPage.Line> agreement(SignedIn who, ReferenceList list) {
        List<ReferenceListPage.Line> lines = new ArrayList<>();
        String query = "?programme=" + list.programme().id();
        if (who.has(Role.SUPERVISOR, list.programme().id())) {
            lines.add(line("/my-scoring/reference" + query, "reference.to.own", "reference.about.own"));
        }
        if (list.directs()) {
            lines.add(line("/cohort/reference" + query, "reference.to.all", "reference.about.all"));
        }
        return lines;
    }

    private ReferenceListPage.Line line(String href, String key, String about) {
        return new ReferenceListPage.Line(href, words.say(key), words.say(about), null);
    }

    private ReferenceListPage.Choices choices(List<Rubric> procedures) {
        return new ReferenceListPage.Choices(
                procedures.stream()
                        .map(rubric -> new Option(
                                rubric.procedure(),
                                words.say("reference.procedure.option", rubric.title(), rubric.version()),
                                null))
                        .toList(),
                Arrays.stream(Band.values())
                        .map(band -> new Option(band.name(), words.say("case.band.short", band), null))
                        .toList());
    }

    /** @param typed what was sent and not kept; empty for a fresh page */
    ReferencePage page(SignedIn who, ReferenceFile file, FormView typed) {
        ReferenceCase reference = file.reference();
        ReferenceScoring own = file.own();
        return new ReferencePage(
                href(reference),
                LIST + "?programme=" + reference.programmeId(),
                nav(who),
                title(reference),
                facts(file),
                reference.film(),
                file.closed() ? words.say("reference.closed.since", since(file)) : null,
                own == null
                        ? null
                        : words.say(
                                "reference.scored.at", MOMENT.format(own.at().atZone(file.zone()))),
                own == null ? new TableView(List.of(), List.of()) : scores(file.rubric(), own),
                file.scores()
                        ? ScoredPhases.of(
                                file.rubric(), levels(typed), !typed.errors().isEmpty())
                        : List.of(),
                List.of(new Option(ReferenceCases.NOT_SEEN, words.say("reference.rest.not-seen"), null)),
                typed.values().containsKey("rest") ? List.of(ReferenceCases.NOT_SEEN) : List.of(),
                file.directs() && !file.closed(),
                typed);
    }

    private List<ReferencePage.Fact> facts(ReferenceFile file) {
        List<ReferencePage.Fact> facts = new ArrayList<>();
        facts.add(new ReferencePage.Fact(null, file.rubric().title()));
        facts.add(new ReferencePage.Fact(
                null, words.say("reference.rubric", file.rubric().version())));
        facts.add(new ReferencePage.Fact(
                null, words.say("case.band.short", file.reference().band())));
        if (!file.closed()) {
            facts.add(new ReferencePage.Fact(null, state(file)));
        }
        return facts;
    }

    /** The day it was closed on, or its last day. */
    private static String since(ReferenceFile file) {
        Instant closed = file.reference().closedAt();
        return closed == null ? closes(file) : day(LocalDate.ofInstant(closed, file.zone()));
    }

    private TableView scores(Rubric rubric, ReferenceScoring own) {
        return new TableView(
                Stream.of("step", "level", "sentence")
                        .map(key -> new Column(words.say("reference.column." + key), key.equals("level")))
                        .toList(),
                rubric.steps().stream()
                        .map(step -> List.of(
                                Cell.of(step.name()),
                                Cell.of(said(own.levels().get(step.code()))),
                                Cell.of(
                                        own.levels().containsKey(step.code())
                                                ? step.sentence(own.levels().get(step.code()))
                                                : "")))
                        .toList());
    }

    private String said(@Nullable Integer level) {
        return level == null ? words.say("reference.not-seen") : Integer.toString(level);
    }

    /** 0 for a step that was not seen. */
    private static Map<String, Integer> levels(FormView typed) {
        Map<String, Integer> levels = new HashMap<>();
        ReferenceController.answers(typed.values())
                .forEach((step, answer) -> levels.put(step, answer.matches("[1-5]") ? Integer.parseInt(answer) : 0));
        return levels;
    }

    private String title(ReferenceCase reference) {
        return words.say("reference.case", reference.reference(), reference.title());
    }

    private static String href(ReferenceCase reference) {
        return LIST + "/" + reference.id();
    }

    private static String day(LocalDate day) {
        return DAY.format(day);
    }
}
