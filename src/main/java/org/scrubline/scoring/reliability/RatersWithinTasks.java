package org.scrubline.scoring.reliability;

import java.util.Arrays;
import org.scrubline.scoring.Require;

/**
 * Generalizability study of persons x (raters within tasks): every person does every task, each task has its own
 * raters. It is the pattern of the work place, where each case brings its own assessors.
 *
 * <p>Tasks are written h and raters within tasks i:h, as in Brennan's notation. Input: at least 2 persons, 2 tasks and
 * 2 raters a task, the same number in each task. Negative components are reported as they are.
 *
 * <p>Brennan, Generalizability Theory, Springer 2001, chapter 3, doi:10.1007/978-1-4757-3456-0.
 */
public final class RatersWithinTasks {

    /**
     * One number for each effect.
     *
     * @param p persons
     * @param h tasks
     * @param ih raters within tasks
     * @param ph persons by tasks
     * @param pih persons by raters within tasks, the residual
     */
    public record Effects(double p, double h, double ih, double ph, double pih) {}

    private final int persons;
    private final int tasks;
    private final int raters;
    private final double meanTerm;
    private final Effects terms;
    private final Effects squares;

    private RatersWithinTasks(double[][] scores, int[] taskOfColumn) {
        Require.table("The table of scores", scores, 2, 4);
        Require.sameLength("The list of tasks", taskOfColumn.length, "a row of scores", scores[0].length);
        int[] distinct = Arrays.stream(taskOfColumn).distinct().toArray();
        persons = scores.length;
        tasks = Require.atLeast("The number of tasks", distinct.length, 2);
        raters = taskOfColumn.length / tasks;
        Require.atLeast("The number of raters a task", raters, 2);
        for (int task : distinct) {
            long own = Arrays.stream(taskOfColumn).filter(t -> t == task).count();
            Require.that(own == raters, "Every task needs the same number of raters, but task %s has %s.", task, own);
        }
        double origin = scores[0][0];
        double[] person = new double[persons];
        double[] column = new double[taskOfColumn.length];
        double[] task = new double[tasks];
        double[][] cell = new double[persons][tasks];
        double cells = 0;
        double raw = 0;
        for (int p = 0; p < persons; p++) {
            for (int c = 0; c < column.length; c++) {
                int h = indexOf(distinct, taskOfColumn[c]);
                double value = scores[p][c] - origin;
                person[p] += value / column.length;
                column[c] += value / persons;
                task[h] += value / (persons * raters);
                cell[p][h] += value / raters;
                raw += scores[p][c] * scores[p][c];
                cells += scores[p][c];
            }
        }
        double shifted = Arrays.stream(person).average().orElse(0);
        double mean = cells / (persons * column.length);
        meanTerm = persons * column.length * mean * mean;
        double total = 0;
        double residual = 0;
        double persontask = 0;
        double withinTask = 0;
        for (int p = 0; p < persons; p++) {
            for (int c = 0; c < column.length; c++) {
                int h = indexOf(distinct, taskOfColumn[c]);
                double value = scores[p][c] - origin;
                total += TwoWayTable.square(value - shifted);
                residual += TwoWayTable.square(value - cell[p][h] - column[c] + task[h]);
                persontask += TwoWayTable.square(cell[p][h] - person[p] - task[h] + shifted);
                withinTask += TwoWayTable.square(column[c] - task[h]);
            }
        }
        squares = new Effects(
                clean(column.length * TwoWayTable.squaresAround(person, shifted), total),
                clean(persons * raters * TwoWayTable.squaresAround(task, shifted), total),
                clean(withinTask, total),
                clean(persontask, total),
                clean(residual, total));
        terms = new Effects(
                meanTerm + squares.p,
                meanTerm + squares.h,
                meanTerm + squares.h + squares.ih,
                meanTerm + squares.p + squares.h + squares.ph,
                raw);
    }

    private static double clean(double squares, double total) {
        return TwoWayTable.unlessRounding(squares, total);
    }

    private static int indexOf(int[] values, int value) {
        int index = 0;
        while (values[index] != value) {
            index++;
        }
        return index;
    }

    /**
     * From scores.
     *
     * @param scores persons x columns, a column is one rater of one task
     * @param taskOfColumn number of the task of each column
     */
    public static RatersWithinTasks of(double[][] scores, int... taskOfColumn) {
        return new RatersWithinTasks(scores, taskOfColumn);
    }

    /** Number of tasks in the data. */
    public int tasks() {
        return tasks;
    }

    /** Number of raters a task in the data. */
    public int raters() {
        return raters;
    }

    /** Brennan's T of the mean: number of scores times the squared mean. */
    public double meanTerm() {
        return meanTerm;
    }

    /** Brennan's T terms: sums of squared means over the scores they cover, uncorrected. */
    public Effects terms() {
        return terms;
    }

    /** The mean squares. */
    public Effects meanSquares() {
        double p = persons - 1.0;
        double h = tasks - 1.0;
        double i = tasks * (raters - 1.0);
        return new Effects(squares.p / p, squares.h / h, squares.ih / i, squares.ph / (p * h), squares.pih / (p * i));
    }

    /** The variance components. */
    public Effects variances() {
        Effects ms = meanSquares();
        return new Effects(
                (ms.p - ms.ph) / (tasks * raters),
                (ms.h - ms.ih - ms.ph + ms.pih) / (persons * raters),
                (ms.ih - ms.pih) / persons,
                (ms.ph - ms.pih) / raters,
                ms.pih);
    }

    /** The mean over {@code nh} other tasks with {@code ni} own raters each. */
    public Projection projected(int nh, int ni) {
        Effects v = requireNumbers(nh, ni);
        double ratings = (double) nh * ni;
        double relative = v.ph / nh + v.pih / ratings;
        return new Projection(v.p, relative, relative + v.h / nh + v.ih / ratings);
    }

    /** The mean over the same tasks, taken as all of interest, with {@code ni} other raters each. */
    public Projection projectedWithTasksFixed(int nh, int ni) {
        Effects v = requireNumbers(nh, ni);
        double ratings = (double) nh * ni;
        return new Projection(v.p + v.ph / nh, v.pih / ratings, (v.pih + v.ih) / ratings);
    }

    private Effects requireNumbers(int nh, int ni) {
        Require.atLeast("The number of tasks", nh, 1);
        Require.atLeast("The number of raters a task", ni, 1);
        return variances();
    }
}
