package org.scrubline.people;

import java.util.List;
import java.util.UUID;
import org.scrubline.platform.Audited;

/**
 * A programme plans other numbers of cases of a family.
 *
 * @param family its code
 */
record ExposurePlanned(UUID actor, UUID programme, UUID plan, String family, List<Integer> from, List<Integer> to)
        implements Audited {

    @Override
    public String action() {
        return "exposure-planned";
    }

    @Override
    public Item item() {
        return new Item("exposure-plan", plan, null, family);
    }

    @Override
    public String before() {
        return ExposurePlanStore.text(from);
    }

    @Override
    public String after() {
        return ExposurePlanStore.text(to);
    }
}
