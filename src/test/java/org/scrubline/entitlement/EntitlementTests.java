package org.scrubline.entitlement;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.scrubline.entitlement.EntitlementChange.Kind;
import org.scrubline.rubric.Band;
import org.scrubline.rubric.Family;

class EntitlementTests {

    private static final UUID PROGRAMME = UUID.randomUUID();
    private static final UUID TRAINEE = UUID.randomUUID();
    private static final Instant START = Instant.parse("2026-01-05T12:00:00Z");
    private static final LocalDate REVIEW = LocalDate.of(2026, 7, 5);

    private int count;

    private EntitlementChange decided(EntitlementLevel level, Band... bands) {
        return change(Kind.DECIDED, level, Set.of(bands));
    }

    private EntitlementChange change(Kind kind, @Nullable EntitlementLevel level, Set<Band> bands) {
        return new EntitlementChange(
                PROGRAMME,
                TRAINEE,
                Family.TRABECULECTOMY,
                bands,
                kind,
                kind == Kind.DECIDED ? level : null,
                kind == Kind.DECIDED ? REVIEW : null,
                new UUID(1, ++count),
                UUID.randomUUID(),
                START.plusSeconds(count));
    }

    @Test
    void withoutADecisionNothingHolds() {
        assertThat(Entitlement.after(List.of())).isEmpty();
    }

    @Test
    void bandsDecidedTogetherStandTogether() {
        List<Entitlement> held = Entitlement.after(List.of(decided(EntitlementLevel.E2, Band.A, Band.B)));
        assertThat(held).singleElement().satisfies(one -> {
            assertThat(one.level()).isEqualTo(EntitlementLevel.E2);
            assertThat(one.bands()).containsExactlyInAnyOrder(Band.A, Band.B);
            assertThat(one.suspended()).isFalse();
        });
    }

    @Test
    void aLaterDecisionHoldsForItsBandsAlone() {
        List<Entitlement> held = Entitlement.after(
                List.of(decided(EntitlementLevel.E2, Band.A, Band.B), decided(EntitlementLevel.E3, Band.A)));
        assertThat(held).extracting(Entitlement::level).containsExactly(EntitlementLevel.E3, EntitlementLevel.E2);
        assertThat(held).extracting(Entitlement::bands).containsExactly(Set.of(Band.A), Set.of(Band.B));
    }

    @Test
    void whatIsSuspendedKeepsItsLevelAndHoldsAgainWhenReinstated() {
        EntitlementChange first = decided(EntitlementLevel.E3, Band.A);
        EntitlementChange suspended = change(Kind.SUSPENDED, EntitlementLevel.E3, Set.of(Band.A));
        assertThat(Entitlement.after(List.of(first, suspended))).singleElement().satisfies(one -> {
            assertThat(one.suspended()).isTrue();
            assertThat(one.level()).isEqualTo(EntitlementLevel.E3);
        });
        EntitlementChange again = change(Kind.REINSTATED, EntitlementLevel.E3, Set.of(Band.A));
        assertThat(Entitlement.after(List.of(first, suspended, again)))
                .singleElement()
                .satisfies(one -> assertThat(one.suspended()).isFalse());
    }

    @Test
    void aSuspensionOfWhatWasNeverDecidedIsNothing() {
        assertThat(Entitlement.after(List.of(change(Kind.SUSPENDED, EntitlementLevel.E2, Set.of(Band.D)))))
                .isEmpty();
    }

    @Test
    void aReviewIsDueTheDayAfterItsDate() {
        Entitlement one =
                Entitlement.after(List.of(decided(EntitlementLevel.E2, Band.A))).get(0);
        assertThat(one.reviewDue(REVIEW)).isFalse();
        assertThat(one.reviewDue(REVIEW.plusDays(1))).isTrue();
    }

    @Test
    void aDecisionWithoutALevelIsNoChange() {
        assertThatIllegalArgumentException().isThrownBy(() -> change(Kind.DECIDED, null, Set.of(Band.A)));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> decided(EntitlementLevel.E2))
                .withMessageContaining("band");
    }

    @Test
    void bandsAreWrittenInOrderAndReadBack() {
        assertThat(Bands.write(List.of(Band.C, Band.A, Band.A))).isEqualTo("AC");
        assertThat(Bands.read("AC")).containsExactly(Band.A, Band.C);
        assertThat(Bands.read("")).isEmpty();
        assertThatIllegalArgumentException().isThrownBy(() -> Bands.read("AX"));
    }

    /** Band by band a later decision replaces, a suspension marks and a reinstatement unmarks: written out naively. */
    @Test
    void twoHundredRandomHistoriesAddUpBandByBand() {
        Random random = new Random(20_261_128);
        for (int run = 0; run < 200; run++) {
            List<EntitlementChange> changes = new ArrayList<>();
            Map<Band, EntitlementLevel> levels = new EnumMap<>(Band.class);
            Set<Band> suspended = EnumSet.noneOf(Band.class);
            for (int i = 0; i < 12; i++) {
                EntitlementChange change = random(random);
                changes.add(change);
                for (Band band : change.bands()) {
                    if (change.kind() == Kind.DECIDED) {
                        levels.put(band, change.level());
                        suspended.remove(band);
                    } else if (levels.containsKey(band) && change.kind() == Kind.SUSPENDED) {
                        suspended.add(band);
                    } else {
                        suspended.remove(band);
                    }
                }
            }
            Map<Band, EntitlementLevel> held = new EnumMap<>(Band.class);
            Set<Band> marked = EnumSet.noneOf(Band.class);
            Entitlement.after(changes)
                    .forEach(one -> one.bands().forEach(band -> {
                        assertThat(held.put(band, one.level()))
                                .as("one answer a band")
                                .isNull();
                        if (one.suspended()) {
                            marked.add(band);
                        }
                    }));
            assertThat(held).isEqualTo(levels);
            assertThat(marked).isEqualTo(suspended);
        }
    }

    private EntitlementChange random(Random random) {
        Set<Band> bands = EnumSet.noneOf(Band.class);
        while (bands.isEmpty()) {
            for (Band band : Band.values()) {
                if (random.nextBoolean()) {
                    bands.add(band);
                }
            }
        }
        EntitlementLevel level = EntitlementLevel.values()[random.nextInt(6)];
        return change(Kind.values()[random.nextInt(3)], level, bands);
    }
}
