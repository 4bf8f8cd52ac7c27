package org.scrubline.entitlement;

import static java.util.Objects.requireNonNull;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.rubric.Band;
import org.scrubline.rubric.Family;

/**
 * What holds for one trainee now, in one family and the bands with the same history.
 *
 * @param decidedAt when the level was decided
 * @param source the decision it follows from
 * @param suspendedAt null while it is not suspended
 */
public record Entitlement(
        UUID programmeId,
        UUID traineeId,
        Family family,
        Set<Band> bands,
        EntitlementLevel level,
        LocalDate reviewOn,
        Instant decidedAt,
        UUID source,
        @Nullable Instant suspendedAt) {

    public Entitlement {
        bands = Set.copyOf(bands);
    }

    public boolean suspended() {
        return suspendedAt != null;
    }

    /** Whether the committee should have looked at it again. */
    public boolean reviewDue(LocalDate today) {
        return reviewOn.isBefore(today);
    }

    /** What the changes of one trainee in one programme add up to, families in their order, then by band. */
    public static List<Entitlement> after(List<EntitlementChange> oldestFirst) {
        Map<Family, Map<Band, Entitlement>> held = new EnumMap<>(Family.class);
        for (EntitlementChange change : oldestFirst) {
            Map<Band, Entitlement> bands = held.computeIfAbsent(change.family(), f -> new EnumMap<>(Band.class));
            for (Band band : change.bands()) {
                bands.compute(band, (b, before) -> next(before, change));
            }
        }
        List<Entitlement> all = new ArrayList<>();
        held.values().forEach(bands -> join(bands, all));
        return all;
    }

    /** Nothing can be suspended that was never decided. */
    private static @Nullable Entitlement next(@Nullable Entitlement before, EntitlementChange change) {
        if (change.kind() == EntitlementChange.Kind.DECIDED) {
            return new Entitlement(
                    change.programmeId(),
                    change.traineeId(),
                    change.family(),
                    Set.of(),
                    requireNonNull(change.level()),
                    requireNonNull(change.reviewOn()),
                    change.decidedAt(),
                    change.source(),
                    null);
        }
        return before == null
                ? null
                : before.with(
                        before.bands(), change.kind() == EntitlementChange.Kind.SUSPENDED ? change.decidedAt() : null);
    }

    /** Bands with the same history become one. */
    private static void join(Map<Band, Entitlement> byBand, List<Entitlement> all) {
        int first = all.size();
        byBand.forEach((band, one) -> {
            for (int i = first; i < all.size(); i++) {
                Entitlement other = all.get(i);
                if (other.with(Set.of(), other.suspendedAt()).equals(one)) {
                    Set<Band> both = EnumSet.copyOf(other.bands());
                    both.add(band);
                    all.set(i, other.with(both, other.suspendedAt()));
                    return;
                }
            }
            all.add(one.with(Set.of(band), one.suspendedAt()));
        });
    }

    private Entitlement with(Set<Band> newBands, @Nullable Instant suspended) {
        return new Entitlement(programmeId, traineeId, family, newBands, level, reviewOn, decidedAt, source, suspended);
    }
}
