package org.scrubline.scoring.curve;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Collects scores row by row in primitive arrays and sorts them once. */
public final class ScoreTableBuilder {

    private static final int MOST_LEVELS = 15;

    final int levels;
    final boolean stepsGiven;
    final Map<String, Integer> steps = new LinkedHashMap<>();
    final List<String> extraSupervisors = new ArrayList<>();
    private final Map<String, Integer> index = new HashMap<>();
    final List<AssessmentHead> heads = new ArrayList<>();
    private @Nullable AssessmentHead latest;
    private int latestIndex;
    int covariates = -1;
    int rows;
    int[] rowAssessment = new int[1024];
    short[] rowStep = new short[1024];
    byte[] rowSpan = new byte[1024];

    /**
     * An empty builder.
     *
     * @param levels number of levels K, 2..15
     * @param steps step codes in their order, one given twice at its first place; empty = the steps that occur,
     *     sorted
     * @param supervisors supervisors to list even without a score
     * @throws IllegalArgumentException when levels are out of range
     */
    public ScoreTableBuilder(int levels, List<String> steps, List<String> supervisors) {
        if (levels < 2 || levels > MOST_LEVELS) {
            throw new IllegalArgumentException("the number of levels must be 2..15, but is " + levels);
        }
        this.levels = levels;
        this.stepsGiven = !steps.isEmpty();
        listSteps(steps);
        extraSupervisors.addAll(supervisors);
    }

    /**
     * Adds one score; entries that allow every level are counted as not seen.
     *
     * @param score of an assessment that names one trainee, one supervisor and one case in all its rows
     * @throws IllegalArgumentException when its level is above K, its step not in a given list, its assessment was
     *     added with another trainee, supervisor or case, or its number of complexity values is another
     */
    public void add(ObservedScore score) {
        if (score.highest() > levels) {
            throw new IllegalArgumentException("assessment " + score.assessment() + ", step " + score.step()
                    + ": level " + score.highest() + " is above the highest level " + levels);
        }
        int assessment = assessment(score);
        if (rows == rowSpan.length) {
            int size = rows + (rows >> 1);
            rowAssessment = Arrays.copyOf(rowAssessment, size);
            rowStep = Arrays.copyOf(rowStep, size);
            rowSpan = Arrays.copyOf(rowSpan, size);
        }
        rowAssessment[rows] = assessment;
        rowStep[rows] = step(score.step());
        rowSpan[rows++] = (byte) (score.lowest() << 4 | score.highest());
    }

    private short step(String code) {
        Integer known = steps.get(code);
        if (known == null) {
            if (stepsGiven) {
                throw new IllegalArgumentException("step " + code + " is not in the list of steps");
            }
            known = steps.size();
            steps.put(code, known);
        }
        return known.shortValue();
    }

    private int assessment(ObservedScore score) {
        AssessmentHead head = latest;
        if (head == null || !head.id().equals(score.assessment())) {
            latestIndex = index.computeIfAbsent(score.assessment(), id -> newHead(score));
            head = heads.get(latestIndex);
            latest = head;
        }
        CaseContext context = score.context();
        if (!head.trainee().equals(score.trainee()) || !head.supervisor().equals(score.supervisor())) {
            throw new IllegalArgumentException(
                    "assessment " + head.id() + " names two trainees or two supervisors; give each its own assessment");
        }
        if (!Objects.equals(head.context(), context)) {
            throw new IllegalArgumentException("the rows of assessment " + head.id() + " describe different cases");
        }
        return latestIndex;
    }

    private int newHead(ObservedScore score) {
        int given = score.context().complexity().size();
        if (covariates >= 0 && covariates != given) {
            throw new IllegalArgumentException("assessment " + score.assessment() + " has " + given
                    + " complexity values, others have " + covariates);
        }
        covariates = given;
        heads.add(new AssessmentHead(score.assessment(), score.trainee(), score.supervisor(), score.context()));
        return heads.size() - 1;
    }

    /**
     * Lists steps that may have no score; those known already stay where they are.
     *
     * @param codes step codes
     */
    public void listSteps(List<String> codes) {
        codes.forEach(code -> this.steps.putIfAbsent(code, this.steps.size()));
    }

    /**
     * Lists supervisors who may have no score.
     *
     * @param ids of supervisors
     */
    public void listSupervisors(List<String> ids) {
        extraSupervisors.addAll(ids);
    }

    /** {@return the supervisors with a row so far, in order of appearance} */
    public Set<String> supervisorsSeen() {
        Set<String> seen = new LinkedHashSet<>();
        heads.forEach(head -> seen.add(head.supervisor()));
        return seen;
    }

    /**
     * Sorts and freezes; the builder must not be used afterwards.
     *
     * @return the table
     * @throws IllegalArgumentException when an assessment scores a step twice, or assessments share a case but give it
     *     different experience, gap or time
     */
    public ScoreTable build() {
        return new ScoreTable(new ScoreSorting(this));
    }

    byte nothing() {
        return (byte) (1 << 4 | levels);
    }

    /** {@return all step codes met or given so far, in order of appearance} */
    public List<String> stepsInOrderOfAppearance() {
        return Collections.unmodifiableList(new ArrayList<>(steps.keySet()));
    }
}
