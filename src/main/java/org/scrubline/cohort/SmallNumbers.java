package org.scrubline.cohort;

import java.util.Arrays;
import java.util.List;
import java.util.OptionalInt;
import java.util.stream.IntStream;

/**
 * A table of counts of people in which small numbers are hidden, and whatever would let them be worked out (secondary
 * suppression). Totals are part of the table: its last row and column.
 *
 * <p>A cell below the least number is hidden, zero included, because that nobody is in a group says as much about people.
 * Then more cells are hidden until another table agrees with all that is shown for each of them: one in which a small cell
 * is no longer small, one in which any other has another number. How many there are in all counts as known; what
 * else somebody knows beside the table is out of reach.
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
        return together(List.of(counts), least).get(0);
    }

    /**
     * The same for tables of the same people in the same groups, whose rows have the same totals: a total that one of
     * them hides is hidden in all.
     *
     * @param tables one or more, each with the rows of the others
     */
    public static List<SmallNumbers> together(List<List<List<Integer>>> tables, int least) {
        List<int[][]> counted =
                tables.stream().map(counts -> checked(counts, least)).toList();
        boolean[] totals = new boolean[counted.get(0).length];
        boolean settled = false;
        List<boolean[][]> hidden = List.of();
        while (!settled) {
            boolean[] known = totals.clone();
            hidden = counted.stream()
                    .map(table -> Hiding.of(table, least, known))
                    .toList();
            hidden.forEach(one -> addTotals(one, totals));
            settled = Arrays.equals(known, totals);
        }
        List<boolean[][]> last = hidden;
        return IntStream.range(0, tables.size())
                .mapToObj(i -> new SmallNumbers(shown(counted.get(i), last.get(i))))
                .toList();
    }

    private static void addTotals(boolean[][] hidden, boolean[] totals) {
        for (int r = 0; r < totals.length; r++) {
            totals[r] |= hidden[r][hidden[r].length - 1];
        }
    }

    private static int[][] checked(List<List<Integer>> counts, int least) {
        int width = counts.isEmpty() ? 0 : counts.get(0).size();
        boolean ragged = counts.stream().anyMatch(row -> row.size() != width);
        boolean negative = counts.stream().flatMap(List::stream).anyMatch(count -> count < 0);
        if (width == 0 || ragged || negative || least < 1) {
            throw new IllegalArgumentException("a table of counts has equal rows and no negative count");
        }
        return withTotals(counts, width);
    }

    private static List<List<OptionalInt>> shown(int[][] table, boolean[][] hidden) {
        return IntStream.range(0, table.length)
                .mapToObj(r -> IntStream.range(0, table[r].length)
                        .mapToObj(c -> hidden[r][c] ? OptionalInt.empty() : OptionalInt.of(table[r][c]))
                        .toList())
                .toList();
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
}
