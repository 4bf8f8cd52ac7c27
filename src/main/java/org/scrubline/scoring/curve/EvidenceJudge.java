package org.scrubline.scoring.curve;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeMap;

/** Counts one trainee's evidence against the minimums. */
final class EvidenceJudge {

    private final PopulationFit fit;
    private final ScoreTable table;
    private final ProcedureStandard standard;
    private final int trainee;
    private final TreeMap<Integer, Integer> perScorer = new TreeMap<>();
    private final Set<Integer> cases = new HashSet<>();
    private final int[] seen;
    private int assessments;

    EvidenceJudge(PopulationFit fit, ScoreTable table, ProcedureStandard standard, int trainee) {
        this.fit = fit;
        this.table = table;
        this.standard = standard;
        this.trainee = trainee;
        seen = new int[table.steps().size()];
        if (trainee >= 0) {
            count();
        }
    }

    private void count() {
        for (int i = table.caseStart[trainee]; i < table.caseStart[trainee + 1]; i++) {
            for (int j = table.assessmentStart[i]; j < table.assessmentStart[i + 1]; j++) {
                if (!standard.pending().contains(table.assessmentIds[j])) {
                    cases.add(i);
                    assessments++;
                    perScorer.merge(table.supervisor[j], 1, Integer::sum);
                    for (int k = table.scoreStart[j]; k < table.scoreStart[j + 1]; k++) {
                        seen[table.step[k]]++;
                    }
                }
            }
        }
    }

    /**
     * The judgement.
     *
     * @param variance posterior variance of the present level, without the band's factor
     * @param prior the population's variance of the same level
     */
    Evidence judge(double variance, double prior) {
        double index = Math.max(0, 1 - CompetencyModel.BAND_FACTOR * CompetencyModel.BAND_FACTOR * variance / prior);
        List<Evidence.Reason> reasons = new ArrayList<>();
        ProcedureStandard.Minimums least = standard.minimums();
        if (trainee < 0) {
            reasons.add(new Evidence.Reason(Evidence.Kind.NO_ASSESSMENTS, "", 0, least.shownCases()));
        }
        below(reasons, Evidence.Kind.FEW_CASES, cases.size(), least.shownCases());
        below(reasons, Evidence.Kind.FEW_SCORERS, perScorer.size(), least.shownScorers());
        criticalSteps(reasons, least.criticalSeen());
        below(reasons, Evidence.Kind.WIDE_BAND, index, least.shownIndex());
        if (reasons.isEmpty()) {
            below(reasons, Evidence.Kind.FEW_CASES_FOR_DECISION, cases.size(), least.supportCases());
            below(reasons, Evidence.Kind.FEW_SCORERS_FOR_DECISION, perScorer.size(), least.supportScorers());
        }
        double share = largestShare();
        if (share > least.largestShare() && perScorer.size() > 1) {
            reasons.add(new Evidence.Reason(Evidence.Kind.ONE_SCORER_DOMINATES, "", share, least.largestShare()));
        }
        connection(reasons);
        oneLevelScorers(reasons);
        Evidence.Strength strength = index < least.shownIndex()
                ? Evidence.Strength.NOT_ENOUGH
                : index < least.reportableIndex() ? Evidence.Strength.PROVISIONAL : Evidence.Strength.REPORTABLE;
        return new Evidence(index, strength, cases.size(), perScorer.size(), share, reasons);
    }

    private static void below(List<Evidence.Reason> reasons, Evidence.Kind kind, double have, double need) {
        if (have < need) {
            reasons.add(new Evidence.Reason(kind, "", have, need));
        }
    }

    private void criticalSteps(List<Evidence.Reason> reasons, int need) {
        for (String code : standard.criticalSteps()) {
            int s = table.steps().indexOf(code);
            int have = s < 0 ? 0 : seen[s];
            if (have < need) {
                reasons.add(new Evidence.Reason(Evidence.Kind.CRITICAL_STEP_SELDOM_SEEN, code, have, need));
            }
        }
    }

    private double largestShare() {
        int most = perScorer.values().stream().mapToInt(Integer::intValue).max().orElse(0);
        return assessments == 0 ? 0 : (double) most / assessments;
    }

    /** In a programme of several groups that share nobody, comparisons between them rest on the priors. */
    private void connection(List<Evidence.Reason> reasons) {
        long scoring = fit.groups().stream().filter(g -> !g.shares().isEmpty()).count();
        if (scoring > 1 && !perScorer.isEmpty()) {
            String any = table.supervisors().get(perScorer.firstKey());
            int size = fit.groups().stream()
                    .filter(g -> g.supervisors().contains(any))
                    .mapToInt(g -> g.supervisors().size())
                    .findFirst()
                    .orElse(0);
            reasons.add(new Evidence.Reason(
                    Evidence.Kind.NOT_CONNECTED, "", size, fit.supervisors().size()));
        }
    }

    /** A scorer who gives one extreme level only says nothing that tells level from habit. */
    private void oneLevelScorers(List<Evidence.Reason> reasons) {
        for (int v : perScorer.keySet()) {
            int first = table.assessmentStart[table.caseStart[trainee]];
            int end = table.assessmentStart[table.caseStart[trainee + 1]];
            boolean top = gives(v, first, end, true) && gives(v, 0, table.assessments(), true);
            boolean bottom = !top && gives(v, first, end, false) && gives(v, 0, table.assessments(), false);
            if (top || bottom) {
                Evidence.Kind kind = top ? Evidence.Kind.TOP_SCORES_ONLY : Evidence.Kind.BOTTOM_SCORES_ONLY;
                reasons.add(new Evidence.Reason(kind, table.supervisors().get(v), assessments, 0));
            }
        }
    }

    /** True when all scores of a supervisor among these assessments are the highest, or all the lowest, level. */
    private boolean gives(int supervisor, int first, int end, boolean highest) {
        for (int j = first; j < end; j++) {
            for (int k = table.scoreStart[j]; table.supervisor[j] == supervisor && k < table.scoreStart[j + 1]; k++) {
                boolean extreme = highest
                        ? ScoreTable.lowest(table.span[k]) == table.levels()
                        : ScoreTable.highest(table.span[k]) == 1;
                if (!extreme) {
                    return false;
                }
            }
        }
        return true;
    }
}
