package org.scrubline.scoring.curve;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** The rows of a builder as sorted arrays: trainee, case, assessment, step. */
final class ScoreSorting {
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

    ScoreSorting(ScoreTableBuilder b) {
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
        b.heads.forEach(head -> all.put(head.supervisor(), true));
        return IdOrder.sorted(all.keySet());
    }

    private static Integer[] order(ScoreTableBuilder b) {
        List<String> ids = new ArrayList<>();
        List<String> people = new ArrayList<>();
        List<String> cases = new ArrayList<>();
        for (AssessmentHead head : b.heads) {
            ids.add(head.id());
            people.add(head.trainee());
            cases.add(head.context().caseId());
        }
        Comparator<AssessmentHead> byPlace = Comparator.comparing(AssessmentHead::trainee, IdOrder.of(people))
                .thenComparingLong(head -> head.context().order())
                .thenComparing(head -> head.context().caseId(), IdOrder.of(cases))
                .thenComparing(AssessmentHead::id, IdOrder.of(ids));
        Integer[] order = new Integer[b.heads.size()];
        Arrays.setAll(order, i -> i);
        Arrays.sort(order, (i, j) -> byPlace.compare(b.heads.get(i), b.heads.get(j)));
        return order;
    }

    private void placeHeads(ScoreTableBuilder b, List<Integer> kept) {
        Map<String, Integer> place = new HashMap<>();
        supervisors.forEach(id -> place.put(id, place.size()));
        for (int k = 0; k < kept.size(); k++) {
            AssessmentHead head = b.heads.get(kept.get(k));
            assessmentIds[k] = head.id();
            supervisor[k] = place.getOrDefault(head.supervisor(), 0);
            for (int x = 0; x < covariates; x++) {
                complexity[k * covariates + x] = head.context().complexity().get(x);
            }
        }
    }

    private void placeCases(ScoreTableBuilder b, Integer[] order, boolean[] says) {
        CaseColumns cases = new CaseColumns();
        AssessmentHead before = null;
        double waiting = 0;
        int placed = 0;
        for (int j : order) {
            AssessmentHead head = b.heads.get(j);
            boolean sameTrainee = before != null && before.trainee().equals(head.trainee());
            boolean sameCase = sameTrainee && sameCase(before, head);
            if (!sameTrainee) {
                waiting = 0;
            }
            if (!sameCase) {
                waiting += head.context().gapExcess();
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
        experience = cases.experience.stream().mapToDouble(Double::doubleValue).toArray();
        gapExcess = cases.gap.stream().mapToDouble(Double::doubleValue).toArray();
    }

    private static boolean sameCase(@Nullable AssessmentHead before, AssessmentHead head) {
        if (before == null || !before.context().caseId().equals(head.context().caseId())) {
            return false;
        }
        if (before.context().order() != head.context().order()
                || before.context().experience() != head.context().experience()
                || before.context().gapExcess() != head.context().gapExcess()) {
            throw new IllegalArgumentException("assessments " + before.id() + " and " + head.id()
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

    /** Cases in the making; the sizes are not known before the walk. */
    private static final class CaseColumns {
        final List<String> trainees = new ArrayList<>();
        final List<Integer> caseStart = new ArrayList<>();
        final List<Integer> assessmentStart = new ArrayList<>();
        final List<String> ids = new ArrayList<>();
        final List<Long> order = new ArrayList<>();
        final List<Double> experience = new ArrayList<>();
        final List<Double> gap = new ArrayList<>();

        void place(AssessmentHead head, double waitingGap, int assessment) {
            boolean newTrainee =
                    trainees.isEmpty() || !trainees.get(trainees.size() - 1).equals(head.trainee());
            if (newTrainee) {
                trainees.add(head.trainee());
                caseStart.add(ids.size());
            }
            if (newTrainee || !ids.get(ids.size() - 1).equals(head.context().caseId())) {
                assessmentStart.add(assessment);
                ids.add(head.context().caseId());
                order.add(head.context().order());
                experience.add(head.context().experience());
                gap.add(waitingGap);
            }
        }

        int[] starts(List<Integer> starts, int end) {
            starts.add(end);
            return starts.stream().mapToInt(Integer::intValue).toArray();
        }
    }
}
