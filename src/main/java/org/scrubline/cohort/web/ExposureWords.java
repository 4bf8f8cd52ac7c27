package org.scrubline.cohort.web;

import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;
import org.scrubline.casework.SurgicalCase;
import org.scrubline.cohort.Exposure;
import org.scrubline.people.ExposurePlan;
import org.scrubline.platform.TableView;
import org.scrubline.platform.TableView.Cell;
import org.scrubline.platform.TableView.Column;
import org.scrubline.platform.Wording;
import org.scrubline.rubric.Family;
import org.scrubline.rubric.Rubrics;
import org.springframework.stereotype.Component;

/** Says cases done and planned. What matters most stands first: a phone shows the first columns only. */
@Component
class ExposureWords {

    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMM uuuu", Locale.UK);
    private static final List<String> TEXTS =
            List.of("trainee", "family", "says", "case", "procedure", "ended", "part");

    private final Rubrics rubrics;
    private final Wording wording;

    ExposureWords(Rubrics rubrics, Wording wording) {
        this.rubrics = rubrics;
        this.wording = wording;
    }

    /** A row a trainee and family; the counts open the cases they count. */
    TableView table(Exposure.Report report) {
        return new TableView(
                columns("trainee", "family", "done", "planned", "says", "unsigned", "months"),
                report.lines().stream().map(line -> row(report, line)).toList());
    }

    private List<Column> columns(String... keys) {
        return Stream.of(keys)
                .map(key -> new Column(wording.text("exposure.column." + key), !TEXTS.contains(key)))
                .toList();
    }

    private List<Cell> row(Exposure.Report report, Exposure.Line line) {
        String behind = "/cohort/exposure/cases?programme=%s&trainee=%s&family=%s"
                .formatted(report.programme().id(), line.trainee().id(), line.family());
        return List.of(
                new Cell(
                        line.trainee().printedName(),
                        "/training/" + line.trainee().id()),
                Cell.of(family(line.family())),
                count(line.done(), behind),
                Cell.of(String.format(Locale.ROOT, "%.1f", line.planned())),
                Cell.of(says(line)),
                count(line.unsigned(), behind),
                Cell.of(line.months()));
    }

    private static Cell count(int number, String href) {
        return number == 0 ? Cell.of(number) : new Cell(Integer.toString(number), href);
    }

    private String says(Exposure.Line line) {
        if (line.months() < ExposurePlan.MONTHS_BEFORE) {
            return wording.text("exposure.early");
        }
        return line.behind() > 0 ? wording.text("exposure.behind", line.behind()) : wording.text("exposure.on-plan");
    }

    String family(Family family) {
        return wording.text("rubric.family." + family);
    }

    /** A row a case, which opens it for whom it is open. */
    TableView cases(Exposure.LineCases behind, boolean open) {
        return new TableView(
                columns("case", "procedure", "ended", "part", "waiting"),
                behind.cases().stream()
                        .map(one -> row(one, behind.programme().zone(), open))
                        .toList());
    }

    private List<Cell> row(Exposure.Done done, ZoneId zone, boolean open) {
        SurgicalCase one = done.surgicalCase();
        String performed = Optional.ofNullable(one.convertedTo()).orElse(one.procedureCode());
        ZoneId clock = Optional.ofNullable(one.endedZone()).orElse(zone);
        return List.of(
                new Cell(one.reference(), open ? "/cases/" + one.id() : null),
                Cell.of(rubrics.current(performed).rubric().title()),
                Cell.of(DAY.format(Objects.requireNonNull(one.endedAt()).atZone(clock))),
                Cell.of(wording.text("exposure.part." + done.part())),
                Cell.of(done.unsigned()));
    }
}
