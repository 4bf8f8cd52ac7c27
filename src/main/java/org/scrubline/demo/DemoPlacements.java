package org.scrubline.demo;

import java.time.Instant;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.scrubline.demo.plan.DemoCast;
import org.scrubline.demo.plan.DemoPlan;
import org.scrubline.people.ExposurePlan;
import org.scrubline.people.ExposurePlans;
import org.scrubline.people.Placement;
import org.scrubline.people.PlacementEntry;
import org.scrubline.people.Placements;
import org.scrubline.rubric.Family;
import org.springframework.context.annotation.Profile;
import org.springframework.stereotype.Component;

/** Where the trainees work by half-year, one of them away for a time and one at a share of full time, and the plan. */
@Component
@Profile("demo")
class DemoPlacements {

    private static final String FULL = "100";

    /** Cases a year of training at full time is planned to bring, about what a full year of the plan holds. */
    private static final Map<Family, List<Integer>> PLANNED = Map.of(
            Family.TRABECULECTOMY, List.of(1, 2, 2, 2, 2, 2, 2, 2, 2, 2, 2, 2),
            Family.DRAINAGE_DEVICE, List.of(0, 1, 1, 1, 1, 0, 1, 1, 1, 0, 1, 1),
            Family.GEL_STENT, List.of(0, 0, 1, 0, 0, 1, 0, 1, 0, 0, 1, 0),
            Family.NEEDLING, List.of(0, 1, 0, 1, 0, 1, 0, 1, 0, 1, 0, 1),
            Family.POST_OPERATIVE_CARE, List.of(0, 1, 0, 1, 0, 1, 0, 1, 0, 1, 0, 0));

    private final Placements placements;
    private final ExposurePlans plans;

    DemoPlacements(Placements placements, ExposurePlans plans) {
        this.placements = placements;
        this.plans = plans;
    }

    void plan(Cast cast, DemoPlan plan, Timeline timeline) {
        timeline.at(
                at(plan.begin()),
                () -> PLANNED.forEach((family, months) -> plans.plan(
                                cast.director(), cast.programme().id(), family.name(), typed(months))
                        .orThrow()));
        for (DemoCast.Trainee trainee : DemoCast.TRAINEES) {
            timeline.at(
                    at(plan.month(trainee.postings().get(0).firstMonth())),
                    () -> trainee.postings().forEach(posting -> place(cast, plan, trainee, posting, timeline)));
        }
    }

    private static Map<String, String> typed(List<Integer> months) {
        Map<String, String> typed = new HashMap<>();
        for (int month = 1; month <= ExposurePlan.MONTHS; month++) {
            typed.put(ExposurePlans.field(month), months.get(month - 1).toString());
        }
        return typed;
    }

    private void place(
            Cast cast, DemoPlan plan, DemoCast.Trainee trainee, DemoCast.Posting posting, Timeline timeline) {
        boolean away = trainee.id().equals(DemoCast.AWAY);
        boolean returns =
                away && posting.firstMonth() <= DemoCast.AWAY_UNTIL && posting.firstMonth() > DemoCast.AWAY_FROM;
        boolean leaves = away && posting.firstMonth() < DemoCast.AWAY_FROM && posting.lastMonth() >= DemoCast.AWAY_FROM;
        LocalDate first = plan.month(returns ? DemoCast.AWAY_UNTIL + 1 : posting.firstMonth());
        Placement placed = placements
                .place(
                        cast.director(),
                        cast.programme().id(),
                        new PlacementEntry(
                                cast.trainee(trainee.id()).personId().toString(),
                                cast.site(posting.site()).id().toString(),
                                first.toString(),
                                plan.month(posting.lastMonth() + 1).minusDays(1).toString(),
                                share(trainee)))
                .orThrow();
        if (leaves) {
            LocalDate gone = plan.month(DemoCast.AWAY_FROM);
            timeline.at(
                    at(gone),
                    () -> placements
                            .end(
                                    cast.director(),
                                    cast.programme().id(),
                                    placed.id(),
                                    gone.minusDays(1).toString())
                            .orThrow());
        }
    }

    private static String share(DemoCast.Trainee trainee) {
        return trainee.id().equals(DemoCast.PART_TIME) ? Integer.toString(DemoCast.PART_TIME_SHARE) : FULL;
    }

    private static Instant at(LocalDate day) {
        return day.atStartOfDay(DemoCast.ZONE).toInstant();
    }
}
