package org.scrubline.demo.plan;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.scrubline.demo.plan.DemoCast.Trainee;
import org.scrubline.rubric.Family;

/** How able a trainee is at each case, in levels: cases of the own family teach in full, others a little. */
final class Skill {

    private static final double OTHER_FAMILY = .35;

    /** This share of what was gained is lost over a long leave and comes back over so many cases. */
    private static final double LOST = .45;

    private static final int RECOVERY = 8;

    /** Months without a case that count as a leave. */
    private static final int LEAVE = 5;

    private final Trainee trainee;
    private final Map<Family, Integer> done = new HashMap<>();
    private int lastMonth;
    private int sinceReturn = RECOVERY;
    private double lost;

    Skill(Trainee trainee) {
        this.trainee = trainee;
    }

    /** The level at the next case, which then counts as done. */
    double next(Family family, int month) {
        double learned = learned(family);
        if (lastMonth > 0 && month - lastMonth > LEAVE) {
            sinceReturn = 0;
            lost = LOST * (learned - trainee.start());
        }
        double share = Math.max(0, 1 - sinceReturn / (double) RECOVERY);
        sinceReturn++;
        lastMonth = month;
        done.merge(family, 1, Integer::sum);
        return learned - share * lost;
    }

    private double learned(Family family) {
        int all = done.values().stream().mapToInt(Integer::intValue).sum();
        int own = done.getOrDefault(family, 0);
        double effective = own + OTHER_FAMILY * (all - own);
        double missing = trainee.ceiling() - trainee.start();
        return trainee.ceiling() - missing * StrictMath.exp(-effective / trainee.pace());
    }

    /** One for each trainee, by id. */
    static Map<String, Skill> all(List<Trainee> trainees) {
        Map<String, Skill> all = new HashMap<>();
        trainees.forEach(trainee -> all.put(trainee.id(), new Skill(trainee)));
        return all;
    }
}
