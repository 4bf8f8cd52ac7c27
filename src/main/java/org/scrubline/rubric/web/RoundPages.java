package org.scrubline.rubric.web;

import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.UUID;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.FormView;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.TableView;
import org.scrubline.platform.Wording;
import org.scrubline.rubric.PublishedRubric;
import org.scrubline.rubric.Rubric;
import org.scrubline.rubric.Rubrics;
import org.scrubline.rubric.Step;
import org.scrubline.rubric.change.RubricDraft;
import org.scrubline.rubric.change.RubricDrafts;
import org.scrubline.rubric.change.RubricPeople;
import org.scrubline.rubric.survey.ContentValidity;
import org.scrubline.rubric.survey.ExpertRound;
import org.scrubline.rubric.survey.ExpertRounds;
import org.scrubline.rubric.survey.RoundResult;
import org.springframework.stereotype.Component;

/** Puts the pages of expert rounds together. */
@Component
class RoundPages {

    private static final String DRAFT = "draft:";
    private static final double PERCENT = 100;

    private final ExpertRounds rounds;
    private final RubricDrafts drafts;
    private final Rubrics rubrics;
    private final RubricPeople people;
    private final Wording wording;
    private final Clock clock;

    RoundPages(
            ExpertRounds rounds,
            RubricDrafts drafts,
            Rubrics rubrics,
            RubricPeople people,
            Wording wording,
            Clock clock) {
        this.rounds = rounds;
        this.drafts = drafts;
        this.rubrics = rubrics;
        this.people = people;
        this.wording = wording;
        this.clock = clock;
    }

    /** A round in the list. */
    record Line(String href, String title, String note) {}

    /**
     * The list.
     *
     * @param zone where the director's days end, null for others
     */
    record ListPage(
            List<Line> rounds,
            boolean directs,
            List<Option> about,
            List<Option> experts,
            @Nullable String zone) {}

    /** A step to rate; {@code chosen} holds at most one rating. */
    record RatedStep(String code, String name, String sees, List<String> chosen) {}

    /** A step's remarks. */
    record Remarks(String step, List<String> texts) {}

    /**
     * One round.
     *
     * @param steps to rate, empty for who has nothing to rate
     * @param state a sentence about answers and the end
     * @param table the result, null until it is known
     * @param average a sentence, or why there is no result
     */
    record RoundPage(
            String action,
            String title,
            String state,
            List<Option> scale,
            List<RatedStep> steps,
            boolean closed,
            @Nullable TableView table,
            String average,
            List<Remarks> remarks) {}

    ListPage list(SignedIn who) {
        boolean directs = RubricPeople.directs(who);
        return new ListPage(
                rounds.of(who).stream().map(this::line).toList(),
                directs,
                directs ? about(who) : List.of(),
                directs
                        ? rounds.candidates(who).stream()
                                .map(person -> Option.of(person.id().toString(), person.printedName()))
                                .toList()
                        : List.of(),
                directs ? people.zone(who).getId() : null);
    }

    private Line line(ExpertRound round) {
        return new Line("/rubrics/rounds/" + round.id(), title(round), state(round));
    }

    private String title(ExpertRound round) {
        return wording.text(
                "rubric.list.entry", round.rubric().title(), round.rubric().version());
    }

    private String state(ExpertRound round) {
        String key = round.closed(clock.instant()) ? "rubric.round.state.closed" : "rubric.round.state.open";
        return wording.text(
                key, round.answered().size(), round.experts().size(), RubricDays.in(round.zone(), round.closesAt()));
    }

    /** Every version, and every open draft without faults. */
    private List<Option> about(SignedIn who) {
        List<PublishedRubric> published = rubrics.published();
        Stream<Option> open = published.stream()
                .map(version -> version.rubric().procedure())
                .distinct()
                .flatMap(procedure -> drafts.open(who, procedure).stream())
                .flatMap(draft -> Stream.ofNullable(drafts.read(draft).rubric()))
                .map(rubric -> Option.of(
                        DRAFT + rubric.procedure(),
                        wording.text("rubric.round.about.draft", rubric.title(), rubric.version())));
        Stream<Option> versions = published.stream()
                .map(version -> Option.of(
                        version.id().toString(),
                        wording.text(
                                "rubric.list.entry",
                                version.rubric().title(),
                                version.rubric().version())));
        return Stream.concat(open, versions).toList();
    }

    /** The rubric behind a choice of {@link ListPage#about}; null when it is none of them. */
    @Nullable
    Rubric chosen(SignedIn who, String about) {
        if (about.startsWith(DRAFT)) {
            String procedure = about.substring(DRAFT.length());
            boolean known = rubrics.published().stream()
                    .anyMatch(version -> version.rubric().procedure().equals(procedure));
            RubricDraft draft = known ? drafts.open(who, procedure).orElse(null) : null;
            return draft == null ? null : drafts.read(draft).rubric();
        }
        return rubrics.published().stream()
                .filter(version -> version.id().toString().equals(about))
                .map(PublishedRubric::rubric)
                .findFirst()
                .orElse(null);
    }

    RoundPage round(SignedIn who, UUID id, FormView form) {
        ExpertRound round = rounds.round(who, id);
        boolean closed = round.closed(clock.instant());
        boolean asked =
                round.experts().contains(who.personId()) && !round.answered().contains(who.personId()) && !closed;
        RoundResult result = rounds.result(who, id).orElse(null);
        boolean known = result != null && result.validity().known();
        return new RoundPage(
                "/rubrics/rounds/" + id,
                title(round),
                state(round),
                scale(),
                asked
                        ? round.rubric().steps().stream()
                                .map(step -> rated(step, form))
                                .toList()
                        : List.of(),
                closed,
                result != null && known ? table(round, result.validity()) : null,
                result == null ? "" : average(round, result.validity()),
                result == null ? List.of() : remarks(round, result));
    }

    private List<Option> scale() {
        return IntStream.rangeClosed(1, ContentValidity.HIGHEST)
                .mapToObj(value -> Option.of(Integer.toString(value), wording.text("rubric.round.relevance." + value)))
                .toList();
    }

    private static RatedStep rated(Step step, FormView form) {
        return new RatedStep(
                step.code(),
                step.name(),
                step.sees(),
                Stream.ofNullable(form.value(ExpertRounds.RELEVANCE + step.code()))
                        .toList());
    }

    private TableView table(ExpertRound round, ContentValidity validity) {
        List<List<TableView.Cell>> rows = new ArrayList<>();
        for (ContentValidity.Share share : validity.steps()) {
            Step step = round.rubric().step(share.step());
            rows.add(List.of(
                    TableView.Cell.of(step.code() + " " + step.name()),
                    TableView.Cell.of(wording.text("rubric.round.of", share.relevant(), share.experts())),
                    TableView.Cell.of(share(share.value())),
                    TableView.Cell.of(wording.text(
                            share.reaches(round.keepPercent()) ? "rubric.round.keeps" : "rubric.round.below"))));
        }
        return new TableView(
                List.of(
                        new TableView.Column(wording.text("rubric.round.column.step"), false),
                        new TableView.Column(wording.text("rubric.round.column.relevant"), true),
                        new TableView.Column(wording.text("rubric.round.column.share"), true),
                        new TableView.Column(wording.text("rubric.round.column.line"), false)),
                rows);
    }

    private String average(ExpertRound round, ContentValidity validity) {
        return validity.known()
                ? wording.text(
                        "rubric.round.average",
                        share(validity.average()),
                        validity.experts(),
                        share(round.keepPercent() / PERCENT))
                : wording.text("rubric.round.few", validity.experts(), ContentValidity.LEAST_EXPERTS);
    }

    private static List<Remarks> remarks(ExpertRound round, RoundResult result) {
        return round.rubric().steps().stream()
                .filter(step -> result.remarks().containsKey(step.code()))
                .map(step -> new Remarks(
                        step.code() + " " + step.name(),
                        Objects.requireNonNull(result.remarks().get(step.code()))))
                .toList();
    }

    private static String share(double value) {
        return String.format(Locale.ROOT, "%.2f", value);
    }
}
