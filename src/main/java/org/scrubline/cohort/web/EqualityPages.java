package org.scrubline.cohort.web;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalInt;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.scrubline.cohort.EqualityReport;
import org.scrubline.cohort.GroupTables;
import org.scrubline.cohort.SmallNumbers;
import org.scrubline.people.Characteristic;
import org.scrubline.platform.TableView;
import org.scrubline.platform.TableView.Cell;
import org.scrubline.platform.TableView.Column;
import org.scrubline.platform.Wording;
import org.springframework.stereotype.Component;

/** Makes the page of tables on groups. */
@Component
class EqualityPages {

    private final Wording wording;

    EqualityPages(Wording wording) {
        this.wording = wording;
    }

    EqualityPage page(EqualityReport report) {
        return new EqualityPage(
                report.programme().id().toString(),
                report.programmes().stream()
                        .map(one -> new CohortPage.Option(one.id().toString(), one.name()))
                        .toList(),
                Arrays.stream(Characteristic.values())
                        .map(one -> section(report, one))
                        .toList());
    }

    private EqualityPage.Section section(EqualityReport report, Characteristic one) {
        GroupTables groups = report.groups().get(one);
        String title = wording.text("characteristic." + one);
        if (groups == null || groups.hidden()) {
            return new EqualityPage.Section(title, wording.text("equality.hidden", report.least()), List.of());
        }
        return new EqualityPage.Section(
                title,
                null,
                new TreeMap<>(groups.tables())
                        .entrySet().stream()
                                .map(table -> table(one, groups.groups(), table, report.least()))
                                .toList());
    }

    private EqualityPage.Table table(
            Characteristic one, List<String> groups, Map.Entry<GroupTables.Measure, SmallNumbers> table, int least) {
        List<Column> columns = Stream.of("group", "below", "above", "all")
                .map(key -> new Column(wording.text("equality.column." + key), !key.equals("group")))
                .toList();
        List<String> names = Stream.concat(
                        groups.stream().map(group -> group(one, group)), Stream.of(wording.text("equality.everyone")))
                .toList();
        return new EqualityPage.Table(
                (one + "-" + table.getKey()).toLowerCase(Locale.ROOT),
                wording.text("equality.caption." + table.getKey(), least),
                new TableView(columns, rows(names, table.getValue())));
    }

    private static List<List<Cell>> rows(List<String> names, SmallNumbers numbers) {
        List<List<Cell>> rows = new ArrayList<>();
        for (int i = 0; i < names.size(); i++) {
            rows.add(Stream.concat(
                            Stream.of(Cell.of(names.get(i))),
                            numbers.cells().get(i).stream().map(EqualityPages::cell))
                    .toList());
        }
        return rows;
    }

    private String group(Characteristic one, String answer) {
        return answer.isEmpty()
                ? wording.text("equality.others")
                : wording.text("characteristic." + one + "." + answer);
    }

    private static Cell cell(OptionalInt number) {
        return number.isPresent() ? Cell.of(number.getAsInt()) : Cell.of("–");
    }
}
