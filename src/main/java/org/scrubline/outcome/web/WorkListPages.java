package org.scrubline.outcome.web;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.scrubline.outcome.FiltrationCase;
import org.scrubline.outcome.FollowUp;
import org.scrubline.outcome.WindowState.State;
import org.scrubline.outcome.WorkList;
import org.scrubline.platform.TableView;
import org.scrubline.platform.TableView.Cell;
import org.scrubline.platform.TableView.Column;
import org.springframework.stereotype.Component;

/** Makes the list of visits to find out about. */
@Component
class WorkListPages {

    private final OutcomeWords words;

    WorkListPages(OutcomeWords words) {
        this.words = words;
    }

    WorkListPage page(WorkList list, WorkList.Show show, @Nullable FollowUp window) {
        String only = window == null ? "" : window.name();
        String path = "/outcomes?programme=" + list.programme().id() + "&show=" + show + "&window=" + only + "&page=";
        int first = (list.page() - 1) * WorkList.PAGE + 1;
        return new WorkListPage(
                list.programme().id().toString(),
                OutcomeWords.programmes(list.programmes()),
                words.choices(WorkList.Show.class),
                show.name(),
                words.choices(FollowUp.class),
                only,
                list.whole(),
                list.cases() == 0,
                words.say("outcome.work.cases", list.cases(), list.noBaseline()),
                list.lines().isEmpty() ? null : lines(list),
                counts(list),
                words.say("outcome.work.place", first, first + list.lines().size() - 1, list.matching()),
                list.page() > 1 ? path + (list.page() - 1) : null,
                list.page() < list.pages() ? path + (list.page() + 1) : null);
    }

    private TableView lines(WorkList list) {
        return new TableView(
                columns("case", "trainee", "visit", "due", "until", "state"),
                list.lines().stream().map(this::line).toList());
    }

    private List<Cell> line(WorkList.Line line) {
        FollowUp window = line.window();
        String state = window == null ? "baseline" : line.overdue() ? "overdue" : "due";
        return List.of(
                new Cell(line.of().reference(), "/outcomes/" + line.of().id()),
                Cell.of(line.of().operators().stream()
                        .map(FiltrationCase.Operator::name)
                        .collect(Collectors.joining(", "))),
                Cell.of(window == null ? words.say("outcome.work.baseline") : words.say(window)),
                Cell.of(OutcomeWords.day(line.due())),
                Cell.of(OutcomeWords.day(line.until())),
                Cell.of(words.say("outcome.work.state." + state)));
    }

    private TableView counts(WorkList list) {
        List<Column> columns = new ArrayList<>(List.of(new Column(words.say("outcome.work.column.visit"), false)));
        Arrays.stream(State.values()).forEach(state -> columns.add(new Column(words.say(state), true)));
        return new TableView(
                columns,
                Arrays.stream(FollowUp.values())
                        .map(window -> counts(window, list.counts().getOrDefault(window, Map.of())))
                        .toList());
    }

    private List<Cell> counts(FollowUp window, Map<State, Integer> counts) {
        List<Cell> cells = new ArrayList<>(List.of(Cell.of(words.say(window))));
        Arrays.stream(State.values()).forEach(state -> cells.add(Cell.of(counts.getOrDefault(state, 0))));
        return cells;
    }

    private List<Column> columns(String... keys) {
        return Stream.of(keys)
                .map(key -> new Column(words.say("outcome.work.column." + key), false))
                .toList();
    }
}
