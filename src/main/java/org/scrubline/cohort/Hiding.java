package org.scrubline.cohort;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Which cells of a table with totals have to be hidden. The table is a network: every row and every column, totals
 * included, is a place whose numbers balance, every cell a link between two places, and two tables with the same balances
 * differ by round trips. A small cell is safe when round trips through it over hidden cells can raise it until it is no
 * longer small; where there is none, the cells of the cheapest one are hidden too, a cell costing its own number (common
 * knowledge of disclosure control, from memory). Each of those could be another number by the same round trip.
 *
 * <p>How many people there are in all is taken as known to everyone, so no round trip changes it.
 */
final class Hiding {

    private static final int FAR = Integer.MAX_VALUE / 2;

    private final int[][] table;
    private final int least;
    private final boolean[][] hidden;

    private record Cell(int row, int column) {}

    private Hiding(int[][] table, int least, boolean[] totals) {
        this.table = table;
        this.least = least;
        this.hidden = new boolean[table.length][table[0].length];
        for (int r = 0; r < table.length; r++) {
            for (int c = 0; c < table[r].length; c++) {
                hidden[r][c] = table[r][c] < least;
            }
            hidden[r][table[r].length - 1] |= totals[r];
        }
    }

    /**
     * True where a cell is hidden.
     *
     * @param table its last row and column are totals
     * @param totals rows whose total is to be hidden whatever it is, and not to be worked out
     */
    static boolean[][] of(int[][] table, int least, boolean[] totals) {
        Hiding hiding = new Hiding(table, least, totals);
        int everyone = table[table.length - 1][table[0].length - 1];
        // With fewer people than that in all, every cell is small and hidden already.
        if (everyone >= least) {
            hiding.protect(totals);
        }
        return hiding.hidden;
    }

    private void protect(boolean[] totals) {
        int last = table[0].length - 1;
        int everyone = table[table.length - 1][last];
        for (int r = 0; r < table.length; r++) {
            for (int c = 0; c <= last; c++) {
                protect(new Cell(r, c), least);
            }
            // Where a row is everyone, every other one is small and safe, and so is this.
            if (totals[r] && table[r][last] < everyone) {
                protect(new Cell(r, last), table[r][last] + 1);
            }
        }
    }

    /** Builds the other table, in which the cell is as large as wanted, one round trip at a time. */
    private void protect(Cell cell, int wanted) {
        int[][] other = Arrays.stream(table).map(int[]::clone).toArray(int[][]::new);
        while (other[cell.row][cell.column] < wanted) {
            List<Integer> trip = roundTrip(other, cell);
            for (int i = 0; i + 1 < trip.size(); i++) {
                Cell link = link(trip.get(i), trip.get(i + 1));
                other[link.row][link.column] += rises(trip.get(i), link) ? 1 : -1;
                hidden[link.row][link.column] = true;
            }
        }
    }

    /** Places from the cell's one end over its other end back to the first, so that the cell rises. There is a way: somebody elsewhere. */
    private List<Integer> roundTrip(int[][] other, Cell cell) {
        int column = table.length + cell.column;
        int start = rises(cell.row, cell) ? cell.row : column;
        int end = start == column ? cell.row : column;
        int[] from = cheapest(other, cell, end);
        List<Integer> trip = new ArrayList<>(List.of(start, end));
        for (int place = start; place != end; place = from[place]) {
            trip.add(2, place);
        }
        return trip;
    }

    /** For each place the one before it on the cheapest way from the start, without the cell. */
    private int[] cheapest(int[][] other, Cell without, int start) {
        int places = table.length + table[0].length;
        int[] cost = new int[places];
        int[] from = new int[places];
        Arrays.fill(cost, FAR);
        cost[start] = 0;
        boolean better = true;
        while (better) {
            better = false;
            for (int row = 0; row < table.length; row++) {
                for (int column = table.length; column < places; column++) {
                    if (!link(row, column).equals(without)) {
                        better |= relax(other, cost, from, row, column);
                        better |= relax(other, cost, from, column, row);
                    }
                }
            }
        }
        return from;
    }

    private boolean relax(int[][] other, int[] cost, int[] from, int here, int there) {
        Cell link = link(here, there);
        boolean everyone = link.row == table.length - 1 && link.column == table[0].length - 1;
        boolean possible = !everyone && (rises(here, link) || other[link.row][link.column] > 0);
        int price = cost[here] + (hidden[link.row][link.column] ? 0 : table[link.row][link.column]);
        if (possible && cost[here] < FAR && price < cost[there]) {
            cost[there] = price;
            from[there] = here;
            return true;
        }
        return false;
    }

    private Cell link(int one, int other) {
        return new Cell(Math.min(one, other), Math.max(one, other) - table.length);
    }

    /** Whether the number of a link rises when it is passed from this end: numbers from their row, totals from the other end. */
    private boolean rises(int from, Cell link) {
        boolean total = (link.row == table.length - 1) != (link.column == table[0].length - 1);
        return (from < table.length) != total;
    }
}
