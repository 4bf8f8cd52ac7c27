package org.scrubline.cohort.web;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.scrubline.cohort.ReferenceReport;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.TableView;
import org.scrubline.platform.TableView.Cell;
import org.scrubline.platform.TableView.Column;
import org.scrubline.platform.Wording;
import org.scrubline.scoring.reliability.SameWork;
import org.scrubline.scoring.reliability.SameWork.Difference;
import org.springframework.stereotype.Component;

/** Makes the pages on how alike reference cases were scored. */
@Component
class ReferenceScoresPages {

    /** From this many levels a step is named. */
    private static final double APART = 1;

    private static final String NOTHING = "–";

    private final Wording wording;

    ReferenceScoresPages(Wording wording) {
        this.wording = wording;
    }

    /** For a director: every supervisor, in the order of names. */
    ReferenceScoresPage all(ReferenceReport report) {
        TableView table = new TableView(
                columns("supervisor", "units", "difference", "apart"),
                report.same().enough()
                        ? report.scorers().entrySet().stream()
                                .map(one -> row(report, one.getKey(), one.getValue()))
                                .toList()
                        : List.of());
        return page(
                report, null, List.of(), say("reference-scores.caption.all", SameWork.UNITS, SameWork.OTHERS), table);
    }

    private List<Cell> row(ReferenceReport report, String scorer, String name) {
        Difference difference = report.same().difference(scorer);
        List<String> apart = new ArrayList<>();
        apart(report, scorer).forEach((step, one) -> apart.add(stepDifference(report, step, one)));
        return List.of(
                Cell.of(name),
                Cell.of(report.same().compared(scorer)),
                Cell.of(difference == null ? NOTHING : say("reference-scores.difference", difference.mean())),
                Cell.of(
                        difference == null
                                ? NOTHING
                                : apart.isEmpty() ? say("reference-scores.apart.none") : String.join("; ", apart)));
    }

    /** For one supervisor: every step, in the order of the rubrics. */
    ReferenceScoresPage own(SignedIn who, ReferenceReport report) {
        String self = who.personId().toString();
        Map<String, Difference> steps = report.same().bySteps(self);
        List<String> apart = new ArrayList<>();
        apart(report, self).forEach((step, one) -> apart.add(stepDifference(report, step, one)));
        TableView table = new TableView(
                columns("step", "units", "own", "others", "difference"),
                report.steps().entrySet().stream()
                        .filter(step -> steps.containsKey(step.getKey()))
                        .map(step -> row(step.getValue(), Objects.requireNonNull(steps.get(step.getKey()))))
                        .toList());
        return page(report, difference(report, self), apart, say("reference-scores.caption.own"), table);
    }

    private List<Cell> row(String step, Difference one) {
        return List.of(
                Cell.of(step),
                Cell.of(one.units()),
                Cell.of(say("reference-scores.mean", one.own())),
                Cell.of(say("reference-scores.mean", one.others())),
                Cell.of(say("reference-scores.difference", one.mean())));
    }

    private @Nullable String difference(ReferenceReport report, String self) {
        if (!report.same().enough()) {
            return null;
        }
        Difference difference = report.same().difference(self);
        return difference == null
                ? say("reference-scores.own.few", report.same().compared(self), SameWork.UNITS, SameWork.OTHERS)
                : say("reference-scores.own", difference.mean(), difference.units());
    }

    private ReferenceScoresPage page(
            ReferenceReport report, @Nullable String own, List<String> apart, String caption, TableView table) {
        SameWork same = report.same();
        return new ReferenceScoresPage(
                report.programme().id().toString(),
                report.programmes().stream()
                        .map(one -> new CohortPage.Option(one.id().toString(), one.name()))
                        .toList(),
                "/reference-cases?programme=" + report.programme().id(),
                List.of(
                        count("scorers", same.scorers()),
                        count("works", same.works()),
                        count("units", same.units()),
                        count("pairs", same.pairs())),
                same.enough()
                        ? null
                        : say("reference-scores.few", same.scorers(), same.units(), SameWork.SCORERS, SameWork.UNITS),
                agreement(same),
                own,
                apart,
                caption,
                table);
    }

    private CohortPage.Fact count(String key, long number) {
        return new CohortPage.Fact(Long.toString(number), say("reference-scores.count." + key, number));
    }

    private List<String> agreement(SameWork same) {
        if (!same.enough()) {
            return List.of();
        }
        OptionalDouble alpha = same.alpha();
        return List.of(
                alpha.isPresent()
                        ? say("reference-scores.alpha", alpha.getAsDouble())
                        : say("reference-scores.alpha.none"),
                say("reference-scores.equal", same.share(0).orElseThrow(), same.pairs()),
                say("reference-scores.neighbours", same.share(1).orElseThrow(), same.pairs()));
    }

    private static Map<String, Difference> apart(ReferenceReport report, String scorer) {
        Map<String, Difference> apart = new LinkedHashMap<>();
        Map<String, Difference> steps = report.same().bySteps(scorer);
        report.steps().keySet().forEach(step -> {
            Difference one = steps.get(step);
            if (one != null && Math.abs(one.mean()) >= APART) {
                apart.put(step, one);
            }
        });
        return apart;
    }

    private String stepDifference(ReferenceReport report, String step, Difference one) {
        return say("reference-scores.step", report.steps().getOrDefault(step, step), one.mean(), one.units());
    }

    private List<Column> columns(String... keys) {
        return Stream.of(keys)
                .map(key -> new Column(
                        say("reference-scores.column." + key),
                        !key.equals("supervisor") && !key.equals("step") && !key.equals("apart")))
                .toList();
    }

    private String say(String key, Object... arguments) {
        return wording.text(key, arguments);
    }
}
