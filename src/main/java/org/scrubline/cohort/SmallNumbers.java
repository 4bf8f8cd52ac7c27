package org.scrubline.cohort;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Deque;
import java.util.List;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * A table of counts of people in which small numbers are hidden, and whatever would let them be worked out (secondary
 * suppression). Totals are part of the table: its last row and column.
 *
 * <p>A cell below the least number is hidden, zero included, because that nobody is in a group says as much about people.
 * Then, until nothing changes, the smallest shown cell of a line is hidden where a line (a) has a single hidden cell,
 * (b) shows its total although its hidden cells add up to less than the least number, or (c) holds a hidden cell that
 * follows from the others: in the graph of rows and columns joined by hidden cells, a cell is determined exactly when its
 * two ends are not joined without it (common knowledge of disclosure control, from memory).
 *
 * @param cells rows of the table with totals; empty where hidden
 */
public record SmallNumbers(List<List<OptionalInt>> cells) {

    public SmallNumbers {
        cells = cells.stream().map(List::copyOf).toList();
    }

    /**
     * Hides what has to be.
     *
     * @param counts rows of non-negative counts of equal length, at least one of each, without totals
     * @param least the smallest number that may be shown; 1 or more
     * @throws IllegalArgumentException for a ragged, empty or negative table or a smaller least number
     */
    public static SmallNumbers of(List<List<Integer>> counts, int least) {
        int width = counts.isEmpty() ? 0 : counts.get(0).size();
        boolean ragged = counts.stream().anyMatch(row -> row.size() != width);
        boolean negative = counts.stream().flatMap(List::stream).anyMatch(count -> count < 0);
        if (width == 0 || ragged || negative || least < 1) {
            throw new IllegalArgumentException("a table of counts has equal rows and no negative count");
        }
        Hiding hiding = new Hiding(withTotals(counts, width), least);
        hiding.run();
        return hiding.result();
    }

    private static int[][] withTotals(List<List<Integer>> counts, int width) {
        int[][] table = new int[counts.size() + 1][width + 1];
        for (int r = 0; r < counts.size(); r++) {
            for (int c = 0; c < width; c++) {
                int count = counts.get(r).get(c);
                table[r][c] = count;
                table[r][width] += count;
                table[counts.size()][c] += count;
                table[counts.size()][width] += count;
            }
        }
        return table;
    }

    /** Whether no count of a group is left, totals apart; the page says so instead of printing a table of dashes. */
    public boolean everythingHidden() {
        return cells.subList(0, cells.size() - 1).stream()
                .flatMap(row -> row.subList(0, row.size() - 1).stream())
                .noneMatch(OptionalInt::isPresent);
    }

    private record Cell(int row, int column) {}

    private static final class Hiding {

        private final int[][] table;
        private final int least;
        private final boolean[][] hidden;

        Hiding(int[][] table, int least) {
            this.table = table;
            this.least = least;
            this.hidden = new boolean[table.length][table[0].length];
        }

        void run() {
            all().filter(cell -> table[cell.row][cell.column] < least)
                    .forEach(cell -> hidden[cell.row][cell.column] = true);
            boolean changed = true;
            while (changed) {
                changed = lines().anyMatch(this::hideOne);
            }
        }

        private Stream<Cell> all() {
            return lines().limit(table.length).flatMap(List::stream);
        }

        /** Rows first, then columns; the total stands last in each. */
        private Stream<List<Cell>> lines() {
            Stream<List<Cell>> rows = IntStream.range(0, table.length)
                    .mapToObj(r -> IntStream.range(0, table[0].length)
                            .mapToObj(c -> new Cell(r, c))
                            .toList());
            Stream<List<Cell>> columns = IntStream.range(0, table[0].length)
                    .mapToObj(c -> IntStream.range(0, table.length)
                            .mapToObj(r -> new Cell(r, c))
                            .toList());
            return Stream.concat(rows, columns);
        }

        private boolean hideOne(List<Cell> line) {
            List<Cell> out = line.stream().filter(this::isHidden).toList();
            if (out.isEmpty() || safe(line, out)) {
                return false;
            }
            List<Cell> shown = line.stream().filter(cell -> !isHidden(cell)).toList();
            shown.stream()
                    .min(Comparator.comparingInt(cell -> table[cell.row][cell.column]))
                    .ifPresent(cell -> hidden[cell.row][cell.column] = true);
            return !shown.isEmpty();
        }

        private boolean safe(List<Cell> line, List<Cell> out) {
            boolean totalShown = !isHidden(line.get(line.size() - 1));
            int sum =
                    out.stream().mapToInt(cell -> table[cell.row][cell.column]).sum();
            return out.size() > 1
                    && !(totalShown && sum < least)
                    && out.stream().allMatch(this::joinedWithout);
        }

        private boolean isHidden(Cell cell) {
            return hidden[cell.row][cell.column];
        }

        /** Whether a way over other hidden cells leads from the cell's row to its column. */
        private boolean joinedWithout(Cell cell) {
            boolean[] rows = new boolean[table.length];
            boolean[] columns = new boolean[table[0].length];
            Deque<Integer> open = new ArrayDeque<>(List.of(cell.row));
            rows[cell.row] = true;
            while (!open.isEmpty()) {
                int row = open.pop();
                for (int c = 0; c < columns.length; c++) {
                    if (hidden[row][c] && !columns[c] && !(row == cell.row && c == cell.column)) {
                        columns[c] = true;
                        reach(c, rows, open, cell);
                    }
                }
            }
            return columns[cell.column];
        }

        private void reach(int column, boolean[] rows, Deque<Integer> open, Cell without) {
            for (int r = 0; r < rows.length; r++) {
                if (hidden[r][column] && !rows[r] && !(r == without.row && column == without.column)) {
                    rows[r] = true;
                    open.push(r);
                }
            }
        }

        SmallNumbers result() {
            List<List<OptionalInt>> cells = new ArrayList<>();
            for (int r = 0; r < table.length; r++) {
                int row = r;
                cells.add(IntStream.range(0, table[0].length)
                        .mapToObj(c -> hidden[row][c] ? OptionalInt.empty() : OptionalInt.of(table[row][c]))
                        .toList());
            }
            return new SmallNumbers(cells);
        }
    }
}
