package org.scrubline.rubric.survey;

import java.util.List;
import java.util.Map;

/**
 * The content validity index. Of a step (I-CVI): the share of experts who rate its relevance 3 or 4 on a scale of 1 to 4
 * (Lynn 1986, from memory). Of all steps (S-CVI/Ave): the mean of the steps' shares (Polit and Beck 2006,
 * doi:10.1002/nur.20147). Fewer than three experts say too little, so there is no index then.
 *
 * @param experts whose ratings it rests on
 * @param steps in the order asked about; empty with too few experts
 */
public record ContentValidity(int experts, List<Share> steps) {

    /** Fewer experts give no index. */
    public static final int LEAST_EXPERTS = 3;

    /** From this rating on a step counts as relevant. */
    public static final int RELEVANT = 3;

    /** The highest rating; the lowest is 1. */
    public static final int HIGHEST = 4;

    private static final int PERCENT = 100;

    /**
     * One step.
     *
     * @param relevant experts who rated it 3 or 4
     * @param experts all who rated it
     */
    public record Share(String step, int relevant, int experts) {

        /** The I-CVI, 0 to 1. */
        public double value() {
            return (double) relevant / experts;
        }

        /** Whether the share reaches a line, in whole percent; counted exactly, never by a rounded share. */
        public boolean reaches(int keepPercent) {
            return relevant * PERCENT >= keepPercent * experts;
        }
    }

    public ContentValidity {
        steps = List.copyOf(steps);
    }

    /**
     * Counts.
     *
     * @param codes the steps asked about
     * @param ratings of each expert by step code, 1 to 4, each for every step
     */
    static ContentValidity of(List<String> codes, List<Map<String, Integer>> ratings) {
        if (ratings.size() < LEAST_EXPERTS) {
            return new ContentValidity(ratings.size(), List.of());
        }
        return new ContentValidity(
                ratings.size(), codes.stream().map(code -> share(code, ratings)).toList());
    }

    private static Share share(String code, List<Map<String, Integer>> ratings) {
        long relevant = ratings.stream()
                .filter(rating -> rating.getOrDefault(code, 0) >= RELEVANT)
                .count();
        return new Share(code, Math.toIntExact(relevant), ratings.size());
    }

    /** Whether there are enough experts. */
    public boolean known() {
        return experts >= LEAST_EXPERTS;
    }

    /** The S-CVI/Ave, 0 to 1; NaN with too few experts. */
    public double average() {
        return steps.stream().mapToDouble(Share::value).average().orElse(Double.NaN);
    }
}
