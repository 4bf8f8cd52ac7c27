package org.scrubline.scoring.mixed;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.PriorityQueue;
import java.util.Set;

/**
 * Cholesky factor of a sparse symmetric positive definite matrix of fixed pattern, columns ordered once by least degree.
 * Left-looking by columns; the pattern of the factor is found while the order is. George and Liu, Computer Solution of
 * Large Sparse Positive Definite Systems, 1981.
 */
final class SparseCholesky {
    /** Position in the elimination order of each original column. */
    private final int[] position;

    private final int size;

    /** Row positions of each column of the factor below the diagonal, ascending. */
    private final int[][] rows;

    private final double[][] values;
    private final double[] diagonal;

    /** For each row position, the columns of the factor with an entry in that row. */
    private final int[][] columnsOfRow;

    private final int[][] indexInColumn;

    /** From the neighbours of every column (off-diagonal non-zeros). */
    SparseCholesky(List<Set<Integer>> neighbours) {
        size = neighbours.size();
        position = new int[size];
        diagonal = new double[size];
        int[][] pattern = eliminate(neighbours);
        rows = new int[size][];
        for (int k = 0; k < size; k++) {
            rows[k] = Arrays.stream(pattern[k])
                    .map(original -> position[original])
                    .sorted()
                    .toArray();
        }
        values = Arrays.stream(rows).map(row -> new double[row.length]).toArray(double[][]::new);
        List<List<Integer>> columns = new ArrayList<>();
        List<List<Integer>> indices = new ArrayList<>();
        for (int k = 0; k < size; k++) {
            columns.add(new ArrayList<>());
            indices.add(new ArrayList<>());
        }
        for (int k = 0; k < size; k++) {
            for (int i = 0; i < rows[k].length; i++) {
                columns.get(rows[k][i]).add(k);
                indices.get(rows[k][i]).add(i);
            }
        }
        columnsOfRow = columns.stream().map(SparseCholesky::toArray).toArray(int[][]::new);
        indexInColumn = indices.stream().map(SparseCholesky::toArray).toArray(int[][]::new);
    }

    private static int[] toArray(List<Integer> list) {
        return list.stream().mapToInt(Integer::intValue).toArray();
    }

    private record Candidate(int degree, int column) {}

    /** Eliminates the column of least degree first; returns the original neighbours left at each elimination. */
    private int[][] eliminate(List<Set<Integer>> neighbours) {
        List<Set<Integer>> graph = new ArrayList<>();
        PriorityQueue<Candidate> queue = new PriorityQueue<>((a, b) -> a.degree() != b.degree()
                ? Integer.compare(a.degree(), b.degree())
                : Integer.compare(a.column(), b.column()));
        for (int c = 0; c < size; c++) {
            graph.add(new HashSet<>(neighbours.get(c)));
            queue.add(new Candidate(graph.get(c).size(), c));
        }
        int[][] pattern = new int[size][];
        boolean[] gone = new boolean[size];
        int next = 0;
        while (next < size) {
            Candidate candidate = queue.remove();
            int column = candidate.column();
            Set<Integer> left = graph.get(column);
            if (gone[column] || candidate.degree() != left.size()) {
                continue; // an outdated entry; the current degree is queued as well
            }
            gone[column] = true;
            position[column] = next;
            pattern[next++] = left.stream().mapToInt(Integer::intValue).toArray();
            for (int neighbour : left) {
                Set<Integer> own = graph.get(neighbour);
                own.addAll(left);
                own.remove(neighbour);
                own.remove(column);
                queue.add(new Candidate(own.size(), neighbour));
            }
        }
        return pattern;
    }

    /** Position of an original column in the factor. */
    int position(int column) {
        return position[column];
    }

    void clear() {
        Arrays.fill(diagonal, 0);
        for (double[] column : values) {
            Arrays.fill(column, 0);
        }
    }

    /** Adds to an entry of the matrix, given by original columns; each off-diagonal pair once. */
    void add(int row, int column, double value) {
        int a = position[row];
        int b = position[column];
        if (a == b) {
            diagonal[a] += value;
        } else {
            int low = Math.min(a, b);
            values[low][Arrays.binarySearch(rows[low], Math.max(a, b))] += value;
        }
    }

    /** Replaces the matrix by its factor; returns the logarithm of the determinant, NaN when not positive definite. */
    double factorise() {
        double[] work = new double[size];
        double logDeterminant = 0;
        for (int j = 0; j < size; j++) {
            for (int i = 0; i < rows[j].length; i++) {
                work[rows[j][i]] = values[j][i];
            }
            double pivot = diagonal[j];
            for (int k = 0; k < columnsOfRow[j].length; k++) {
                int column = columnsOfRow[j][k];
                int from = indexInColumn[j][k];
                double entry = values[column][from];
                pivot -= entry * entry;
                for (int i = from + 1; i < rows[column].length; i++) {
                    work[rows[column][i]] -= entry * values[column][i];
                }
            }
            if (!(pivot > 0)) {
                return Double.NaN;
            }
            diagonal[j] = Math.sqrt(pivot);
            logDeterminant += Math.log(pivot);
            for (int i = 0; i < rows[j].length; i++) {
                values[j][i] = work[rows[j][i]] / diagonal[j];
                work[rows[j][i]] = 0;
            }
        }
        return logDeterminant;
    }

    /** Solves L x = b in place; b is indexed by position. */
    void solveLower(double[] b) {
        for (int j = 0; j < size; j++) {
            b[j] /= diagonal[j];
            for (int i = 0; i < rows[j].length; i++) {
                b[rows[j][i]] -= values[j][i] * b[j];
            }
        }
    }
}
