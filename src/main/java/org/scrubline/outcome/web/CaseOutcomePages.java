package org.scrubline.outcome.web;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.scrubline.outcome.CaseOutcome;
import org.scrubline.outcome.CaseOutcome.Placed;
import org.scrubline.outcome.FollowUp;
import org.scrubline.outcome.OutcomeEntry;
import org.scrubline.outcome.OutcomeFile;
import org.scrubline.outcome.SuccessSet;
import org.scrubline.outcome.Visit;
import org.scrubline.outcome.WindowState;
import org.scrubline.people.Settings;
import org.scrubline.platform.FormView;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.TableView;
import org.scrubline.platform.TableView.Cell;
import org.scrubline.platform.TableView.Column;
import org.scrubline.platform.Wording;
import org.springframework.stereotype.Component;

/** Makes the page of one case's outcome. */
@Component
class CaseOutcomePages {

    private final OutcomeWords words;
    private final Wording wording;
    private final Settings settings;

    CaseOutcomePages(OutcomeWords words, Wording wording, Settings settings) {
        this.words = words;
        this.wording = wording;
        this.settings = settings;
    }

    CaseOutcomePage page(SignedIn who, OutcomeFile file, VisitForm typed, List<Refusal> reasons) {
        CaseOutcome outcome = file.outcome();
        String performed = Optional.ofNullable(file.surgicalCase().convertedTo())
                .orElse(file.surgicalCase().procedureCode());
        return new CaseOutcomePage(
                file.surgicalCase().id().toString(),
                words.say("outcome.case.title", file.surgicalCase().reference(), words.procedure(performed)),
                caseHref(who, file),
                List.of(
                        new CaseOutcomePage.Fact(
                                null, words.say("outcome.case.operated", OutcomeWords.day(outcome.operated()))),
                        new CaseOutcomePage.Fact(
                                null,
                                words.say(
                                        "outcome.case.band", file.surgicalCase().band()))),
                outcome.baseline().map(words::line).orElse(null),
                remarks(outcome),
                windows(file),
                outcome.visits().stream().map(one -> visit(file, one)).toList(),
                results(file),
                history(file),
                new FormView(typed.shown(), wording.errors(reasons)),
                typed.ticked(),
                typed.after(),
                correcting(typed),
                lists());
    }

    /** An administrator enters what is known of any case of the programme; whoever came here otherwise reads the case. */
    private static @Nullable String caseHref(SignedIn who, OutcomeFile file) {
        UUID programme = file.surgicalCase().programmeId();
        boolean reads = who.has(Role.DIRECTOR, programme) || !who.has(Role.ADMINISTRATOR, programme);
        return reads ? "/cases/" + file.surgicalCase().id() : null;
    }

    private @Nullable String correcting(VisitForm typed) {
        Integer replaces = typed.replaces();
        return replaces == null ? null : words.say("outcome.visit.correcting", replaces);
    }

    private List<String> remarks(CaseOutcome outcome) {
        List<String> remarks = new ArrayList<>();
        if (outcome.baseline().isEmpty()) {
            remarks.add(words.say("outcome.case.no-baseline"));
        }
        if (outcome.operatorAlone()) {
            remarks.add(words.say("outcome.case.operator-alone"));
        }
        return remarks;
    }

    private TableView windows(OutcomeFile file) {
        return new TableView(
                Stream.of("visit", "due", "accepted", "state", "found")
                        .map(key -> new Column(words.say("outcome.window." + key), false))
                        .toList(),
                file.outcome().windows(file.today()).stream()
                        .map(state -> window(file.outcome(), state))
                        .toList());
    }

    private List<Cell> window(CaseOutcome outcome, WindowState state) {
        FollowUp window = state.window();
        Placed seen = state.seen();
        String found = seen == null
                ? Optional.ofNullable(state.absence())
                        .map(entry -> words.line(entry.content()))
                        .orElse("–")
                : words.say(
                        seen.outside() ? "outcome.window.outside" : "outcome.window.inside",
                        OutcomeWords.day(seen.visit().day()),
                        words.pressure(seen.visit().pressure()));
        return List.of(
                Cell.of(words.say(window)),
                Cell.of(OutcomeWords.day(window.due(outcome.operated()))),
                Cell.of(words.say(
                        "outcome.window.range",
                        OutcomeWords.day(window.from(outcome.operated())),
                        OutcomeWords.day(window.until(outcome.operated())))),
                Cell.of(words.say(state.state())),
                Cell.of(found));
    }

    private CaseOutcomePage.VisitLine visit(OutcomeFile file, Placed one) {
        String key = one.outside() ? "outcome.visit.title.outside" : "outcome.visit.title";
        return new CaseOutcomePage.VisitLine(
                one.entry().ordinal(),
                words.say(
                        key,
                        words.say(one.window()),
                        OutcomeWords.day(one.visit().day()),
                        words.pressure(one.visit().pressure())),
                words.findings(one.visit()),
                by(file, one.entry()));
    }

    private String by(OutcomeFile file, OutcomeEntry entry) {
        return words.say(
                "outcome.by",
                file.names().getOrDefault(entry.enteredBy(), ""),
                OutcomeWords.at(entry.enteredAt(), file.zone()),
                words.say(entry.source()));
    }

    private List<CaseOutcomePage.Result> results(OutcomeFile file) {
        int lowest = settings.of(file.surgicalCase().programmeId()).successLowest();
        return Arrays.stream(SuccessSet.values())
                .map(set -> new CaseOutcomePage.Result(
                        says(set.judge(file.outcome(), lowest)), words.definition(set, lowest)))
                .toList();
    }

    private String says(SuccessSet.Judgement judgement) {
        return judgement
                .ground()
                .map(ground -> words.say("outcome.case.outside", words.say(ground)))
                .orElseGet(() -> words.say(judgement.result()));
    }

    private List<CaseOutcomePage.HistoryLine> history(OutcomeFile file) {
        Set<UUID> holding = new HashSet<>(
                file.outcome().standing().stream().map(OutcomeEntry::id).toList());
        List<CaseOutcomePage.HistoryLine> lines = new ArrayList<>(file.entries().stream()
                .map(entry -> new CaseOutcomePage.HistoryLine(
                        entry.ordinal(), text(entry), by(file, entry), holding.contains(entry.id())))
                .toList());
        Collections.reverse(lines);
        return lines;
    }

    private String text(OutcomeEntry entry) {
        String line = words.say("outcome.history.line", entry.ordinal(), words.line(entry.content()));
        return entry.replaces() == null ? line : words.say("outcome.history.replaces", line, entry.replaces());
    }

    private CaseOutcomePage.Lists lists() {
        return new CaseOutcomePage.Lists(
                words.choices(FollowUp.class),
                words.choices(OutcomeEntry.Absence.class),
                words.choices(OutcomeEntry.LostReason.class),
                words.choices(OutcomeEntry.Source.class),
                words.choices(Visit.Chamber.class),
                words.choices(Visit.LeakTest.class),
                words.choices(Visit.Bleb.class),
                words.choices(Visit.Vision.class),
                List.of(
                        Option.of("NO", words.say("outcome.effusion.false")),
                        Option.of("YES", words.say("outcome.effusion.true"))),
                words.choices(Visit.Care.class),
                List.of(
                        Option.of(VisitForm.MORE_SURGERY, words.say("outcome.more-surgery")),
                        Option.of(VisitForm.LIGHT_LOST, words.say("outcome.light-lost"))),
                words.choices(Visit.SeenBy.class));
    }
}
