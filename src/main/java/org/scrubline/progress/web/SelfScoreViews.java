package org.scrubline.progress.web;

import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.TableView;
import org.scrubline.platform.TableView.Cell;
import org.scrubline.platform.TableView.Column;
import org.scrubline.platform.Wording;
import org.scrubline.progress.SelfComparison;
import org.scrubline.progress.SelfComparison.Compared;
import org.scrubline.signoff.SignedSheet;
import org.springframework.stereotype.Component;

/** Says how a trainee's own levels lie beside the signed ones. */
@Component
class SelfScoreViews {

    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMM uuuu", Locale.UK);

    /** With fewer cases a mean says little. */
    private static final int CASES = 5;

    /** Half a tenth of a level: less is printed as no difference. */
    private static final double NONE = 0.05;

    private final Wording wording;

    SelfScoreViews(Wording wording) {
        this.wording = wording;
    }

    /**
     * The comparison as the page prints it.
     *
     * @param summary null while no case has both
     * @param few whether there are too few cases to conclude from
     * @param table newest case first
     */
    record View(@Nullable String summary, boolean few, TableView table) {}

    View of(SelfComparison comparison) {
        List<Compared> newestFirst = new ArrayList<>(comparison.cases());
        Collections.reverse(newestFirst);
        return new View(
                summary(comparison),
                comparison.cases().size() < CASES,
                new TableView(columns(), newestFirst.stream().map(this::row).toList()));
    }

    private @Nullable String summary(SelfComparison comparison) {
        if (comparison.recently().isEmpty()) {
            return null;
        }
        double difference = comparison.recently().getAsDouble();
        String direction = difference >= NONE ? "higher" : difference <= -NONE ? "lower" : "same";
        return wording.text("progress.self." + direction, comparison.newest().size(), Math.abs(difference));
    }

    private List<Column> columns() {
        return Stream.of("case", "steps", "own", "signed", "difference")
                .map(name -> new Column(wording.text("progress.self.column." + name), !name.equals("case")))
                .toList();
    }

    private List<Cell> row(Compared one) {
        SignedSheet sheet = one.sheets().get(0);
        return List.of(
                new Cell(DAY.format(sheet.caseEndedAt().atZone(sheet.signedZone())), "/signed/" + sheet.id()),
                Cell.of(one.steps()),
                Cell.of(wording.text("progress.self.mean", one.own())),
                Cell.of(wording.text("progress.self.mean", one.signed())),
                Cell.of(wording.text("progress.self.difference", one.difference())));
    }
}
