package org.scrubline.people;

import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.IntStream;

/**
 * How many cases of a family a year of training at full time is planned to bring, month by month; each year of training
 * begins again with the first month. A trainee's own plan is scaled by the share of full time worked in each month.
 *
 * @param cases twelve whole numbers, 0 to 99, by code of the family
 */
public record ExposurePlan(Map<String, List<Integer>> cases) {

    /** Months of a year of training. */
    public static final int MONTHS = 12;

    /** Training months that must be over before anything is said; one month alone never says it. */
    public static final int MONTHS_BEFORE = 2;

    /** Nothing planned. */
    public static final ExposurePlan NONE = new ExposurePlan(Map.of());

    public ExposurePlan {
        Map<String, List<Integer>> copy = new TreeMap<>();
        cases.forEach((family, months) -> copy.put(family, List.copyOf(months)));
        cases = Collections.unmodifiableMap(copy);
    }

    /** The twelve numbers of a family; zeros where nothing is planned. */
    public List<Integer> months(String family) {
        return cases.getOrDefault(family, Collections.nCopies(MONTHS, 0));
    }

    /** Whether any case of the family is planned. */
    public boolean plans(String family) {
        return months(family).stream().anyMatch(number -> number > 0);
    }

    /** Cases planned for a trainee in the first so many training months, scaled by the share worked. */
    public double planned(String family, TrainingTime time, int trainingMonths) {
        List<Integer> year = months(family);
        return IntStream.rangeClosed(1, trainingMonths)
                .mapToDouble(month -> year.get((month - 1) % MONTHS) * time.share(month))
                .sum();
    }

    /**
     * How many cases a trainee is behind, in whole cases: 0 until {@link #MONTHS_BEFORE} training months are over, and
     * unless fewer were done than planned both at the end of the last training month and at the end of the one before.
     *
     * @param months training months that are over
     */
    public int behind(String family, TrainingTime time, int months, Done done) {
        if (months < MONTHS_BEFORE) {
            return 0;
        }
        int planned = whole(planned(family, time, months));
        boolean twice = done.then() < planned && done.before() < whole(planned(family, time, months - 1));
        return twice ? Math.max(0, planned - done.now()) : 0;
    }

    /**
     * Cases a trainee has done.
     *
     * @param before by the end of the training month before the last one
     * @param then by the end of the last one
     * @param now so far
     */
    public record Done(int before, int then, int now) {}

    /** A part of a case is none; sums of shares may miss a whole number by a hair. */
    private static int whole(double cases) {
        return (int) Math.floor(cases + 1e-6);
    }
}
