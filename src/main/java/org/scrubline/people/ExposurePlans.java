package org.scrubline.people;

import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.IntStream;
import org.scrubline.ledger.LeafKind;
import org.scrubline.ledger.Ledger;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.SignedIn;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** The exposure plan of each programme. */
@Service
@Transactional
public class ExposurePlans {

    private final ExposurePlanStore store;
    private final Ledger ledger;
    private final ApplicationEventPublisher events;
    private final Clock clock;

    ExposurePlans(ExposurePlanStore store, Ledger ledger, ApplicationEventPublisher events, Clock clock) {
        this.store = store;
        this.ledger = ledger;
        this.events = events;
        this.clock = clock;
    }

    /** The plan that holds now. */
    @Transactional(readOnly = true)
    public ExposurePlan of(UUID programmeId) {
        return store.newest(programmeId);
    }

    /** The field of the form a number stands in. */
    public static String field(int month) {
        return "month" + month;
    }

    /**
     * Plans one family from now on. The same numbers again change nothing.
     *
     * @param typed whole numbers from 0 to 99 by {@link #field}; what is empty counts as 0
     * @return the plan that holds now, or why not
     * @throws NotFound for anyone who neither directs nor administers the programme
     */
    public Attempt<ExposurePlan> plan(SignedIn who, UUID programmeId, String family, Map<String, String> typed) {
        if (!LedProgrammes.leads(who, programmeId)) {
            throw new NotFound();
        }
        List<Refusal> reasons = new ArrayList<>();
        List<Integer> cases = IntStream.rangeClosed(1, ExposurePlan.MONTHS)
                .mapToObj(month -> number(month, typed, reasons))
                .toList();
        if (!reasons.isEmpty()) {
            return Attempt.refused(reasons);
        }
        store.lock(programmeId);
        List<Integer> before = of(programmeId).months(family);
        if (!before.equals(cases)) {
            UUID id = store.insert(programmeId, family, cases, who.personId(), clock.instant());
            events.publishEvent(new ExposurePlanned(who.personId(), programmeId, id, family, before, cases));
            ledger.append(LeafKind.EXPOSURE_PLAN, id);
        }
        return Attempt.done(of(programmeId));
    }

    private static int number(int month, Map<String, String> typed, List<Refusal> reasons) {
        String digits = typed.getOrDefault(field(month), "").strip();
        if (digits.isEmpty()) {
            return 0;
        }
        if (!digits.matches("\\d{1,2}")) {
            reasons.add(Refusal.at(field(month), "refusal.plan.number", month));
            return 0;
        }
        return Integer.parseInt(digits);
    }
}
