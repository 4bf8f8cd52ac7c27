package org.scrubline.scoring.curve;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;

/**
 * The observed scores of one procedure as flat arrays: trainee → case → assessment → score, sorted by id, so that the
 * order of input rows changes no bit of any result. Immutable. About 3 bytes a score and 60 bytes an assessment.
 *
 * <p>Entries that say nothing (1..K) are dropped, and with them assessments and cases that hold nothing else; the gap
 * before a dropped case is added to the next one. So a step that was not seen changes nothing.
 */
public final class ScoreTable {

    final int levels;
    final int covariates;
    final List<String> trainees;
    final List<String> supervisors;
    final List<String> steps;

    /** Cases of trainee t: {@code caseStart[t] .. caseStart[t+1]}. */
    final int[] caseStart;

    final String[] caseIds;
    final long[] caseOrder;
    final double[] experience;
    final double[] gapExcess;

    /** Assessments of case i: {@code assessmentStart[i] .. assessmentStart[i+1]}. */
    final int[] assessmentStart;

    final String[] assessmentIds;
    final int[] supervisor;
    final double[] complexity;

    /** Scores of assessment j: {@code scoreStart[j] .. scoreStart[j+1]}, in step order. */
    final int[] scoreStart;

    final short[] step;

    /** Lowest level in the upper, highest in the lower four bits. */
    final byte[] span;

    ScoreTable(ScoreSorting s) {
        levels = s.levels;
        covariates = s.covariates;
        trainees = List.copyOf(s.trainees);
        supervisors = List.copyOf(s.supervisors);
        steps = List.copyOf(s.steps);
        caseStart = s.caseStart;
        caseIds = s.caseIds;
        caseOrder = s.caseOrder;
        experience = s.experience;
        gapExcess = s.gapExcess;
        assessmentStart = s.assessmentStart;
        assessmentIds = s.assessmentIds;
        supervisor = s.supervisor;
        complexity = s.complexity;
        scoreStart = s.scoreStart;
        step = s.step;
        span = s.span;
    }

    /** The same scores, some given to other supervisors. */
    private ScoreTable(ScoreTable t, List<String> supervisors, int[] supervisor) {
        levels = t.levels;
        covariates = t.covariates;
        trainees = t.trainees;
        steps = t.steps;
        caseStart = t.caseStart;
        caseIds = t.caseIds;
        caseOrder = t.caseOrder;
        experience = t.experience;
        gapExcess = t.gapExcess;
        assessmentStart = t.assessmentStart;
        assessmentIds = t.assessmentIds;
        complexity = t.complexity;
        scoreStart = t.scoreStart;
        step = t.step;
        span = t.span;
        this.supervisors = List.copyOf(supervisors);
        this.supervisor = supervisor;
    }

    /** The same table with the marked assessments given to an extra supervisor at the end of the list. */
    ScoreTable withExtraSupervisor(String id, boolean[] marked) {
        int[] moved = supervisor.clone();
        for (int j = 0; j < moved.length; j++) {
            moved[j] = marked[j] ? supervisors.size() : moved[j];
        }
        List<String> longer = new ArrayList<>(supervisors);
        longer.add(id);
        return new ScoreTable(this, longer, moved);
    }

    /**
     * A table of all given scores.
     *
     * @param levels number of levels K, 2..15
     * @param steps step codes in their order, one given twice at its first place; empty = the steps that occur,
     *     sorted
     * @param scores in any order; may be none
     * @return the table
     * @throws IllegalArgumentException with a sentence, when levels are out of range, a step is not in the list, or
     *     rows contradict each other
     */
    public static ScoreTable of(int levels, List<String> steps, Collection<ObservedScore> scores) {
        ScoreTableBuilder builder = new ScoreTableBuilder(levels, steps, List.of());
        scores.forEach(builder::add);
        return builder.build();
    }

    /** {@return the trainees with at least one score, sorted} */
    public List<String> trainees() {
        return trainees;
    }

    /** {@return the supervisors, sorted; some may have no score} */
    public List<String> supervisors() {
        return supervisors;
    }

    /** {@return the step codes in the order of the difficulties; some may have no score} */
    public List<String> steps() {
        return steps;
    }

    /** {@return the number of levels K, 2..15} */
    public int levels() {
        return levels;
    }

    /**
     * {@return whether a supervisor has given nothing but the highest level here, or nothing but the lowest} Only then can a
     * trainee's {@link Evidence} depend on scores of others.
     */
    public boolean hasOneLevelSupervisor() {
        int[] lowest = new int[supervisors.size()];
        int[] highest = new int[supervisors.size()];
        Arrays.fill(lowest, levels + 1);
        for (int j = 0; j < assessments(); j++) {
            for (int k = scoreStart[j]; k < scoreStart[j + 1]; k++) {
                lowest[supervisor[j]] = Math.min(lowest[supervisor[j]], lowest(span[k]));
                highest[supervisor[j]] = Math.max(highest[supervisor[j]], highest(span[k]));
            }
        }
        return Arrays.stream(lowest).anyMatch(level -> level == levels)
                || Arrays.stream(highest).anyMatch(level -> level == 1);
    }

    /** {@return the number of complexity values of each assessment; 0 while there is no row} */
    public int covariates() {
        return covariates;
    }

    /** {@return the number of assessments with at least one score} */
    public int assessments() {
        return supervisor.length;
    }

    /** {@return the number of scores; entries that allow every level are none} */
    public int scores() {
        return span.length;
    }

    static int lowest(byte span) {
        return (span >> 4) & 15;
    }

    static int highest(byte span) {
        return span & 15;
    }
}
