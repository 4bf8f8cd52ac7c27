package org.scrubline.signoff.web;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.SignedIn;
import org.scrubline.rubric.Rubric;
import org.scrubline.rubric.Rubrics;
import org.scrubline.rubric.Step;
import org.scrubline.signoff.ContestFile;
import org.scrubline.signoff.ContestState;
import org.scrubline.signoff.Contests;
import org.scrubline.signoff.RecordEvent;
import org.scrubline.signoff.SheetContent;
import org.scrubline.signoff.SignedLine;
import org.scrubline.signoff.SignedRecords;
import org.scrubline.signoff.SignedSheet;
import org.scrubline.signoff.Statement;
import org.scrubline.signoff.web.ContestListPage.Line;
import org.scrubline.signoff.web.ContestPage.Said;
import org.scrubline.signoff.web.VersionsView.Link;
import org.springframework.stereotype.Component;

/** Puts contests into words. */
@Component
class ContestPages {

    private final Contests contests;
    private final SignedRecords records;
    private final Rubrics rubrics;
    private final RecordWords words;
    private final Clock clock;

    ContestPages(Contests contests, SignedRecords records, Rubrics rubrics, RecordWords words, Clock clock) {
        this.contests = contests;
        this.records = records;
        this.rubrics = rubrics;
        this.words = words;
        this.clock = clock;
    }

    /** Last part of the address of the form for this. */
    static String path(RecordEvent event) {
        return switch (event) {
            case CONTEST_REPLIED -> "reply";
            case REVIEWER_NAMED -> "reviewer";
            case CONTEST_UPHELD, CONTEST_NOT_UPHELD -> "decision";
            case CONTEST_WITHDRAWN -> "end";
            default -> throw new IllegalArgumentException(event.name());
        };
    }

    ContestListPage list(SignedIn who, List<ContestFile> all, List<SignedLine> voids) {
        List<Line> yours = new ArrayList<>();
        List<Line> open = new ArrayList<>();
        List<Line> ended = new ArrayList<>();
        for (ContestFile contest : all) {
            boolean turn = contests.next(who, contest).stream()
                    .anyMatch(event -> event != RecordEvent.CONTEST_WITHDRAWN && isTurn(contest, event));
            boolean waits = turn || versionWaits(who, contest);
            (waits ? yours : contest.open() ? open : ended).add(line(contest));
        }
        return new ContestListPage(
                yours, open, ended, voids.stream().map(this::line).toList());
    }

    /** Naming another reviewer is possible, but nothing waits for it. */
    private static boolean isTurn(ContestFile contest, RecordEvent event) {
        return event != RecordEvent.REVIEWER_NAMED || contest.state() != ContestState.IN_REVIEW;
    }

    private Line line(ContestFile contest) {
        return new Line(
                "/contests/" + contest.id(),
                words.say("signoff.contest.title", contest.trainee().name(), contest.procedure()),
                words.say(
                        "signoff.contest.note",
                        contest.reference(),
                        contest.scorer().name(),
                        at(contest.opened())),
                state(contest),
                due(contest),
                overdue(contest));
    }

    private Link line(SignedLine line) {
        return new Link(
                "/signed/" + line.id() + "/void/decision",
                words.say("signoff.void.line", line.traineeName(), line.procedure(), line.reference()));
    }

    ContestPage of(SignedIn who, ContestFile contest) {
        SignedSheet contested = records.read(who, contest.recordId());
        Rubric rubric = rubrics.byId(contested.rubricVersionId())
                .orElseThrow(NotFound::new)
                .rubric();
        return new ContestPage(
                words.say(
                        "signoff.form.about",
                        contest.trainee().name(),
                        contest.procedure(),
                        contest.reference(),
                        contested.versionNo(),
                        contest.scorer().name()),
                state(contest),
                due(contest),
                overdue(contest),
                contest.voided() ? words.say("signoff.contest.voided") : null,
                new Link("/signed/" + contested.id(), words.say("signoff.contest.record")),
                Stream.concat(Stream.of(contest.opened()), contest.steps().stream())
                        .map(statement -> said(statement, rubric))
                        .toList(),
                next(who, contest));
    }

    private Said said(Statement statement, Rubric rubric) {
        SheetContent.Signer signer = statement.content().signer();
        List<String> facts = new ArrayList<>();
        if (!statement.content().steps().isEmpty()) {
            facts.add(words.say(
                    "signoff.contest.steps",
                    String.join(
                            "; ",
                            statement.content().steps().stream()
                                    .map(code ->
                                            rubric.find(code).map(Step::name).orElse(code))
                                    .toList())));
        }
        SheetContent.Named person = statement.content().person();
        if (person != null) {
            facts.add(words.say("signoff.contest.person", person.name()));
        }
        return new Said(
                words.say("signoff.said." + statement.content().kind()),
                signer.name(),
                words.say("role." + signer.role()),
                at(statement),
                signer.meaning(),
                facts,
                Stream.of(statement.content().text().split("\n+"))
                        .filter(paragraph -> !paragraph.isEmpty())
                        .toList());
    }

    private List<Link> next(SignedIn who, ContestFile contest) {
        List<Link> next = new ArrayList<>(contests.next(who, contest).stream()
                .map(event -> new Link(
                        "/contests/" + contest.id() + "/" + path(event), words.say("signoff.next." + event.name())))
                .toList());
        if (versionWaits(who, contest)) {
            next.add(new Link(
                    "/signed/" + contest.recordId() + "/new-version", words.say("signoff.next.VERSION_OPENED")));
        }
        return next;
    }

    /** The reviewer upheld it and has not signed the version that follows from it. */
    private boolean versionWaits(SignedIn who, ContestFile contest) {
        return contest.state() == ContestState.UPHELD
                && !contest.voided()
                && contest.end()
                        .filter(upheld -> upheld.content().signer().id().equals(who.personId()))
                        .filter(upheld -> records.readSheet(who, contest.sheetId())
                                .signedAt()
                                .isBefore(upheld.content().signedAt()))
                        .isPresent();
    }

    private String state(ContestFile contest) {
        return contest.voided() && !contest.state().ended()
                ? words.say("signoff.contest.voided")
                : words.say(
                        "signoff.contest.state." + contest.state(),
                        contest.reviewer().map(SheetContent.Named::name).orElse(""));
    }

    private @Nullable String due(ContestFile contest) {
        if (!contest.open()) {
            return null;
        }
        Instant now = clock.instant();
        String day = words.day(contest.dueAt(), contest.opened().content().signedZone());
        return overdue(contest)
                ? words.say("signoff.contest.overdue", day, days(contest.dueAt(), now))
                : words.say("signoff.contest.due", day, days(now, contest.dueAt()));
    }

    private boolean overdue(ContestFile contest) {
        return contest.open() && contest.dueAt().isBefore(clock.instant());
    }

    private static long days(Instant from, Instant to) {
        return Duration.between(from, to).toDays();
    }

    private String at(Statement statement) {
        return words.at(statement.content().signedAt(), statement.content().signedZone());
    }
}
