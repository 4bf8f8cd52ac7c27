package org.scrubline.scoring.curve;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.Comparator;
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

    private final int levels;
    private final boolean stepsGiven;
    private final Map<String, Integer> steps = new LinkedHashMap<>();
    private final List<String> extraSupervisors = new ArrayList<>();
    private final Map<String, Integer> index = new HashMap<>();
    private final List<Head> heads = new ArrayList<>();
    private @Nullable Head latest;
    private int latestIndex;
    private int covariates = -1;
    private int rows;
    private int[] rowAssessment = new int[1024];
    private short[] rowStep = new short[1024];
    private byte[] rowSpan = new byte[1024];

    /** What the rows of one assessment share. */
    private record Head(String id, String trainee, String supervisor, CaseContext context) {}

    /**
     * @param levels number of levels K, 2..15
     * @param steps step codes in their order; empty = the steps that occur, sorted
     * @param supervisors supervisors to list even without a score
     */
    public ScoreTableBuilder(int levels, List<String> steps, List<String> supervisors) {
        if (levels < 2 || levels > MOST_LEVELS) {
            throw new IllegalArgumentException("the number of levels must be 2..15, but is " + levels);
        }
        this.levels = levels;
        this.stepsGiven = !steps.isEmpty();
        steps.forEach(code -> this.steps.put(code, this.steps.size()));
        extraSupervisors.addAll(supervisors);
    }

    /** Adds one score; entries that allow every level are counted as not seen. */
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
        Head head = latest;
        if (head == null || !head.id.equals(score.assessment())) {
            latestIndex = index.computeIfAbsent(score.assessment(), id -> newHead(score));
            head = heads.get(latestIndex);
            latest = head;
        }
        CaseContext context = score.context();
        if (!head.trainee.equals(score.trainee()) || !head.supervisor.equals(score.supervisor())) {
            throw new IllegalArgumentException(
                    "assessment " + head.id + " names two trainees or two supervisors; give each its own assessment");
        }
        if (!Objects.equals(head.context, context)) {
            throw new IllegalArgumentException("the rows of assessment " + head.id + " describe different cases");
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
        heads.add(new Head(score.assessment(), score.trainee(), score.supervisor(), score.context()));
        return heads.size() - 1;
    }

    /** Lists steps that may have no score. */
    public void listSteps(List<String> codes) {
        codes.forEach(code -> this.steps.putIfAbsent(code, this.steps.size()));
    }

    /** Lists supervisors who may have no score. */
    public void listSupervisors(List<String> ids) {
        extraSupervisors.addAll(ids);
    }

    /** Supervisors with a row so far. */
    public Set<String> supervisorsSeen() {
        Set<String> seen = new LinkedHashSet<>();
        heads.forEach(head -> seen.add(head.supervisor));
        return seen;
    }

    /** Sorts and freezes; the builder must not be used afterwards. */
    public ScoreTable build() {
        return new ScoreTable(new Sorted(this));
    }

    /** The sorted arrays. */
    static final class Sorted {
        final int levels;
        final int covariates;
        List<String> trainees = List.of();
        final List<String> supervisors;
        final List<String> steps;
        int[] caseStart = new int[1];
        String[] caseIds = new String[0];
        long[] caseOrder = new long[0];
        double[] experience = new double[0];
        double[] gapExcess = new double[0];
        int[] assessmentStart = new int[1];
        final String[] assessmentIds;
        final int[] supervisor;
        final double[] complexity;
        int[] scoreStart;
        short[] step;
        byte[] span;

        Sorted(ScoreTableBuilder b) {
            levels = b.levels;
            covariates = Math.max(b.covariates, 0);
            steps = b.stepsGiven ? new ArrayList<>(b.steps.keySet()) : IdOrder.sorted(b.steps.keySet());
            boolean[] says = saysSomething(b);
            supervisors = supervisors(b);
            Integer[] order = order(b);
            List<Integer> kept = new ArrayList<>();
            for (int j : order) {
                if (says[j]) {
                    kept.add(j);
                }
            }
            assessmentIds = new String[kept.size()];
            supervisor = new int[kept.size()];
            complexity = new double[kept.size() * covariates];
            scoreStart = new int[kept.size() + 1];
            step = new short[0];
            span = new byte[0];
            placeHeads(b, kept);
            placeCases(b, order, says);
            placeScores(b, kept);
        }

        private static boolean[] saysSomething(ScoreTableBuilder b) {
            boolean[] says = new boolean[b.heads.size()];
            for (int i = 0; i < b.rows; i++) {
                says[b.rowAssessment[i]] |= b.rowSpan[i] != b.nothing();
            }
            return says;
        }

        private static List<String> supervisors(ScoreTableBuilder b) {
            Map<String, Boolean> all = new LinkedHashMap<>();
            b.extraSupervisors.forEach(id -> all.put(id, true));
            b.heads.forEach(head -> all.put(head.supervisor, true));
            return IdOrder.sorted(all.keySet());
        }

        private static Integer[] order(ScoreTableBuilder b) {
            List<String> ids = new ArrayList<>();
            List<String> people = new ArrayList<>();
            List<String> cases = new ArrayList<>();
            for (Head head : b.heads) {
                ids.add(head.id);
                people.add(head.trainee);
                cases.add(head.context.caseId());
            }
            Comparator<Head> byPlace = Comparator.comparing(Head::trainee, IdOrder.of(people))
                    .thenComparingLong(head -> head.context.order())
                    .thenComparing(head -> head.context.caseId(), IdOrder.of(cases))
                    .thenComparing(Head::id, IdOrder.of(ids));
            Integer[] order = new Integer[b.heads.size()];
            Arrays.setAll(order, i -> i);
            Arrays.sort(order, (i, j) -> byPlace.compare(b.heads.get(i), b.heads.get(j)));
            return order;
        }

        private void placeHeads(ScoreTableBuilder b, List<Integer> kept) {
            Map<String, Integer> place = new HashMap<>();
            supervisors.forEach(id -> place.put(id, place.size()));
            for (int k = 0; k < kept.size(); k++) {
                Head head = b.heads.get(kept.get(k));
                assessmentIds[k] = head.id;
                supervisor[k] = place.getOrDefault(head.supervisor, 0);
                for (int x = 0; x < covariates; x++) {
                    complexity[k * covariates + x] = head.context.complexity().get(x);
                }
            }
        }

        private void placeCases(ScoreTableBuilder b, Integer[] order, boolean[] says) {
            CaseColumns cases = new CaseColumns();
            Head before = null;
            double waiting = 0;
            int placed = 0;
            for (int j : order) {
                Head head = b.heads.get(j);
                boolean sameTrainee = before != null && before.trainee.equals(head.trainee);
                boolean sameCase = sameTrainee && sameCase(before, head);
                if (!sameTrainee) {
                    waiting = 0;
                }
                if (!sameCase) {
                    waiting += head.context.gapExcess();
                }
                if (says[j]) {
                    cases.place(head, waiting, placed++);
                    waiting = 0;
                }
                before = head;
            }
            trainees = cases.trainees;
            caseStart = cases.starts(cases.caseStart, cases.ids.size());
            assessmentStart = cases.starts(cases.assessmentStart, placed);
            caseIds = cases.ids.toArray(String[]::new);
            caseOrder = cases.order.stream().mapToLong(Long::longValue).toArray();
            experience =
                    cases.experience.stream().mapToDouble(Double::doubleValue).toArray();
            gapExcess = cases.gap.stream().mapToDouble(Double::doubleValue).toArray();
        }

        private static boolean sameCase(@Nullable Head before, Head head) {
            if (before == null || !before.context.caseId().equals(head.context.caseId())) {
                return false;
            }
            if (before.context.order() != head.context.order()
                    || before.context.experience() != head.context.experience()
                    || before.context.gapExcess() != head.context.gapExcess()) {
                throw new IllegalArgumentException("assessments " + before.id + " and " + head.id
                        + " share a case but give it different experience, gap or time");
            }
            return true;
        }

        private void placeScores(ScoreTableBuilder b, List<Integer> kept) {
            int[] place = new int[b.heads.size()];
            Arrays.fill(place, -1);
            for (int k = 0; k < kept.size(); k++) {
                place[kept.get(k)] = k;
            }
            for (int i = 0; i < b.rows; i++) {
                if (b.rowSpan[i] != b.nothing()) {
                    scoreStart[place[b.rowAssessment[i]] + 1]++;
                }
            }
            for (int k = 0; k < kept.size(); k++) {
                scoreStart[k + 1] += scoreStart[k];
            }
            short[] stepPlace = stepPlace(b);
            int total = scoreStart[kept.size()];
            step = new short[total];
            span = new byte[total];
            int[] next = Arrays.copyOf(scoreStart, kept.size());
            for (int i = 0; i < b.rows; i++) {
                if (b.rowSpan[i] != b.nothing()) {
                    int k = place[b.rowAssessment[i]];
                    insert(k, next[k]++, stepPlace[b.rowStep[i]], b.rowSpan[i]);
                }
            }
        }

        private short[] stepPlace(ScoreTableBuilder b) {
            short[] place = new short[steps.size()];
            b.steps.forEach((code, number) -> place[number] = (short) steps.indexOf(code));
            return place;
        }

        /** Keeps the scores of one assessment in step order. */
        private void insert(int assessment, int end, short code, byte levels) {
            int at = end;
            while (at > scoreStart[assessment] && step[at - 1] > code) {
                step[at] = step[at - 1];
                span[at] = span[at - 1];
                at--;
            }
            if (at > scoreStart[assessment] && step[at - 1] == code) {
                throw new IllegalArgumentException(
                        "assessment " + assessmentIds[assessment] + " scores step " + steps.get(code) + " twice");
            }
            step[at] = code;
            span[at] = levels;
        }
    }

    private byte nothing() {
        return (byte) (1 << 4 | levels);
    }

    /** Cases in the making; the sizes are not known before the walk. */
    private static final class CaseColumns {
        final List<String> trainees = new ArrayList<>();
        final List<Integer> caseStart = new ArrayList<>();
        final List<Integer> assessmentStart = new ArrayList<>();
        final List<String> ids = new ArrayList<>();
        final List<Long> order = new ArrayList<>();
        final List<Double> experience = new ArrayList<>();
        final List<Double> gap = new ArrayList<>();

        void place(Head head, double waitingGap, int assessment) {
            boolean newTrainee =
                    trainees.isEmpty() || !trainees.get(trainees.size() - 1).equals(head.trainee);
            if (newTrainee) {
                trainees.add(head.trainee);
                caseStart.add(ids.size());
            }
            if (newTrainee || !ids.get(ids.size() - 1).equals(head.context.caseId())) {
                assessmentStart.add(assessment);
                ids.add(head.context.caseId());
                order.add(head.context.order());
                experience.add(head.context.experience());
                gap.add(waitingGap);
            }
        }

        int[] starts(List<Integer> starts, int end) {
            starts.add(end);
            return starts.stream().mapToInt(Integer::intValue).toArray();
        }
    }

    /** All step codes met or given so far, in order of appearance. */
    public List<String> stepsInOrderOfAppearance() {
        return Collections.unmodifiableList(new ArrayList<>(steps.keySet()));
    }
}
