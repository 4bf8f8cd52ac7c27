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
        raters = Require.atLeast("The number of raters a task", taskOfColumn.length / tasks, 2);
        int[] indices = new int[taskOfColumn.length];
        for (int h = 0; h < tasks; h++) {
            int own = 0;
            for (int c = 0; c < indices.length; c++) {
                own += taskOfColumn[c] == distinct[h] ? 1 : 0;
                indices[c] = taskOfColumn[c] == distinct[h] ? h : indices[c];
            }
            Require.that(
                    own == raters, "Every task needs the same number of raters, but task %s has %s.", distinct[h], own);
        }
        squares = squares(scores, indices);
        double raw = Arrays.stream(scores)
                .flatMapToDouble(Arrays::stream)
                .map(TwoWayTable::square)
                .sum();
        double mean =
                Arrays.stream(scores).flatMapToDouble(Arrays::stream).average().orElse(0);
        meanTerm = persons * indices.length * mean * mean;
        terms = new Effects(
                meanTerm + squares.p,
                meanTerm + squares.h,
                meanTerm + squares.h + squares.ih,
                meanTerm + squares.p + squares.h + squares.ph,
                raw);
    }

    /** Sums of squares of each effect, from values taken as differences from the first one. */
    private Effects squares(double[][] scores, int[] task) {
        double[] personMean = new double[persons];
        double[] columnMean = new double[task.length];
        double[] taskMean = new double[tasks];
        double[][] cellMean = new double[persons][tasks];
        for (int p = 0; p < persons; p++) {
            for (int c = 0; c < task.length; c++) {
                double value = scores[p][c] - scores[0][0];
                personMean[p] += value / task.length;
                columnMean[c] += value / persons;
                taskMean[task[c]] += value / (persons * raters);
                cellMean[p][task[c]] += value / raters;
            }
        }
        double mean = Arrays.stream(personMean).average().orElse(0);
        double[] sums = new double[4];
        for (int p = 0; p < persons; p++) {
            for (int c = 0; c < task.length; c++) {
                double value = scores[p][c] - scores[0][0];
                double cell = cellMean[p][task[c]];
                sums[0] += TwoWayTable.square(value - mean);
                sums[1] += TwoWayTable.square(columnMean[c] - taskMean[task[c]]);
                sums[2] += TwoWayTable.square(cell - personMean[p] - taskMean[task[c]] + mean);
                sums[3] += TwoWayTable.square(value - cell - columnMean[c] + taskMean[task[c]]);
            }
        }
        return new Effects(
                TwoWayTable.unlessRounding(task.length * TwoWayTable.squaresAround(personMean, mean), sums[0]),
                TwoWayTable.unlessRounding(persons * raters * TwoWayTable.squaresAround(taskMean, mean), sums[0]),
                TwoWayTable.unlessRounding(sums[1], sums[0]),
                TwoWayTable.unlessRounding(sums[2], sums[0]),
                TwoWayTable.unlessRounding(sums[3], sums[0]));
    }

    /**
     * The study of a table.
     *
     * @param scores persons x columns, a column is one rater of one task
     * @param taskOfColumn any number that stands for the task of each column; columns of a task need not be neighbours
     * @return the study
     * @throws IllegalArgumentException when there are fewer than 2 persons, tasks or raters a task, tasks have
     *     different numbers of raters, or the table is not rectangular or holds something that is no number
     */
    public static RatersWithinTasks of(double[][] scores, int... taskOfColumn) {
        return new RatersWithinTasks(scores, taskOfColumn);
    }

    /** {@return the number of tasks in the data} */
    public int tasks() {
        return tasks;
    }

    /** {@return the number of raters a task in the data} */
    public int raters() {
        return raters;
    }

    /** {@return Brennan's T of the mean: number of scores times the squared mean} */
    public double meanTerm() {
        return meanTerm;
    }

    /** {@return Brennan's T terms: sums of squared means over the scores they cover, uncorrected} */
    public Effects terms() {
        return terms;
    }

    /** {@return the mean squares, 0 or more} */
    public Effects meanSquares() {
        double p = persons - 1.0;
        double h = tasks - 1.0;
        double i = tasks * (raters - 1.0);
        return new Effects(squares.p / p, squares.h / h, squares.ih / i, squares.ph / (p * h), squares.pih / (p * i));
    }

    /** {@return the variance components; all but the residual may be negative} */
    public Effects variances() {
        Effects ms = meanSquares();
        return new Effects(
                (ms.p - ms.ph) / (tasks * raters),
                (ms.h - ms.ih - ms.ph + ms.pih) / (persons * raters),
                (ms.ih - ms.pih) / persons,
                (ms.ph - ms.pih) / raters,
                ms.pih);
    }

    /**
     * {@return what the mean over {@code nh} other tasks with {@code ni} own raters each would be worth: universe score
     * σ²(p), relative error σ²(ph) / nh + σ²(pi:h) / (nh ni), absolute error with σ²(h) / nh and σ²(i:h) / (nh ni)
     * added}
     *
     * @param nh number of tasks, 1 or more
     * @param ni number of raters a task, 1 or more
     * @throws IllegalArgumentException when one is less
     */
    public Projection projected(int nh, int ni) {
        Effects v = requireNumbers(nh, ni);
        double ratings = (double) nh * ni;
        double relative = v.ph / nh + v.pih / ratings;
        return new Projection(v.p, relative, relative + v.h / nh + v.ih / ratings);
    }

    /**
     * {@return what the mean over the same tasks, taken as all of interest, with {@code ni} other raters each would be
     * worth: σ²(ph) / nh counts to the universe score, σ²(h) not at all}
     *
     * @param nh number of tasks, 1 or more
     * @param ni number of raters a task, 1 or more
     * @throws IllegalArgumentException when one is less
     */
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
