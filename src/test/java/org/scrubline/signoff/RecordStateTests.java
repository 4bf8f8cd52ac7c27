package org.scrubline.signoff;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.scrubline.signoff.RecordEvent.ACKNOWLEDGED;
import static org.scrubline.signoff.RecordEvent.CONTEST_NOT_UPHELD;
import static org.scrubline.signoff.RecordEvent.CONTEST_OPENED;
import static org.scrubline.signoff.RecordEvent.CONTEST_REPLIED;
import static org.scrubline.signoff.RecordEvent.CONTEST_UPHELD;
import static org.scrubline.signoff.RecordEvent.CONTEST_WITHDRAWN;
import static org.scrubline.signoff.RecordEvent.COUNTERSIGNED;
import static org.scrubline.signoff.RecordEvent.COUNTERSIGN_REFUSED;
import static org.scrubline.signoff.RecordEvent.LATE_RELEASED;
import static org.scrubline.signoff.RecordEvent.NOT_ACKNOWLEDGED;
import static org.scrubline.signoff.RecordEvent.OPENED;
import static org.scrubline.signoff.RecordEvent.REVIEWER_NAMED;
import static org.scrubline.signoff.RecordEvent.SIGNED;
import static org.scrubline.signoff.RecordEvent.VERSION_DROPPED;
import static org.scrubline.signoff.RecordEvent.VERSION_OPENED;
import static org.scrubline.signoff.RecordEvent.VERSION_SIGNED;
import static org.scrubline.signoff.RecordEvent.VOID_ASKED;
import static org.scrubline.signoff.RecordEvent.VOID_CONFIRMED;
import static org.scrubline.signoff.RecordEvent.VOID_DECLINED;

import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.scrubline.signoff.RecordState.Happened;

/**
 * The order of events of one sheet. The fuzz below judges each sequence a second time with rules that look back over
 * the whole history and share nothing with the state they check.
 */
class RecordStateTests {

    private static final Set<RecordEvent> SIGNING = EnumSet.of(SIGNED, VERSION_SIGNED);
    private static final Set<RecordEvent> CONTEST_ENDS =
            EnumSet.of(CONTEST_UPHELD, CONTEST_NOT_UPHELD, CONTEST_WITHDRAWN);

    @Test
    void nothingButOpeningComesFirst() {
        assertThat(RecordState.BEFORE.next()).containsExactly(OPENED);
    }

    @Test
    void anOpenSheetMayBeReleasedOnceAndSigned() {
        assertThat(after(OPENED).next()).containsExactlyInAnyOrder(LATE_RELEASED, SIGNED);
        assertThat(after(OPENED, LATE_RELEASED).next()).containsExactly(SIGNED);
    }

    @Test
    void aCountersignatureFollowsOnlyASignatureThatNeedsOne() {
        assertThat(after(OPENED, SIGNED).allows(COUNTERSIGNED)).isFalse();
        RecordState awaited = RecordState.after(List.of(Happened.of(OPENED), new Happened(SIGNED, true)));
        assertThat(awaited.allows(COUNTERSIGNED, RecordParty.SECOND_SUPERVISOR)).isTrue();
        assertThat(awaited.allows(COUNTERSIGNED, RecordParty.SCORER)).isFalse();
        assertThat(awaited.then(Happened.of(COUNTERSIGN_REFUSED)).allows(COUNTERSIGNED))
                .as("a refusal blocks nothing")
                .isTrue();
        assertThat(awaited.then(Happened.of(COUNTERSIGNED)).allows(COUNTERSIGN_REFUSED))
                .isFalse();
    }

    @Test
    void aNewVersionStartsWithoutCountersignatureAndAnswer() {
        RecordState answered = RecordState.after(List.of(
                Happened.of(OPENED),
                new Happened(SIGNED, true),
                Happened.of(COUNTERSIGNED),
                Happened.of(ACKNOWLEDGED),
                Happened.of(VERSION_OPENED),
                new Happened(VERSION_SIGNED, true)));
        assertThat(answered.allows(COUNTERSIGNED)).isTrue();
        assertThat(answered.allows(ACKNOWLEDGED)).isTrue();
    }

    @Test
    void whoDidNotAcknowledgeStillMayAndNotTheOtherWayRound() {
        assertThat(after(OPENED, SIGNED, NOT_ACKNOWLEDGED).allows(ACKNOWLEDGED)).isTrue();
        assertThat(after(OPENED, SIGNED, ACKNOWLEDGED).allows(NOT_ACKNOWLEDGED)).isFalse();
    }

    @Test
    void onlyAnUpheldContestMakesADelegate() {
        RecordState named = after(OPENED, SIGNED, CONTEST_OPENED, CONTEST_REPLIED, REVIEWER_NAMED);
        assertThat(named.then(Happened.of(CONTEST_NOT_UPHELD)).allows(VERSION_OPENED, RecordParty.DELEGATE))
                .isFalse();
        assertThat(named.then(Happened.of(CONTEST_UPHELD)).allows(VERSION_OPENED, RecordParty.DELEGATE))
                .isTrue();
    }

    @Test
    void nothingFollowsAVoid() {
        assertThat(after(OPENED, SIGNED, CONTEST_OPENED, VERSION_OPENED, VOID_ASKED, VOID_CONFIRMED)
                        .next())
                .isEmpty();
    }

    @Test
    void whatMayNotFollowIsRefusedLoudly() {
        assertThatThrownBy(() -> after(OPENED, ACKNOWLEDGED))
                .isInstanceOf(IllegalStateException.class)
                .hasMessageContaining("ACKNOWLEDGED");
    }

    /** Events are drawn from all, legal or not; the model must take exactly those the rules over the history take. */
    @Test
    void tenThousandRandomHistoriesNeverReachAnIllegalState() {
        Random random = new Random(20_261_127);
        Set<RecordEvent> taken = EnumSet.noneOf(RecordEvent.class);
        for (int run = 0; run < 10_000; run++) {
            RecordState state = RecordState.BEFORE;
            List<Happened> history = new ArrayList<>();
            for (int step = 0; step < 40; step++) {
                Happened next = draw(random, state);
                boolean legal = legal(history, next.event());
                assertThat(state.allows(next.event()))
                        .as("%s after %s", next, history)
                        .isEqualTo(legal);
                if (legal) {
                    state = state.then(next);
                    history.add(next);
                    taken.add(next.event());
                    assertConsistent(state, history);
                }
            }
            assertThat(RecordState.after(history)).isEqualTo(state);
        }
        assertThat(taken).as("every event was reached").isEqualTo(EnumSet.allOf(RecordEvent.class));
    }

    /** Half of the draws are among what may happen, so that histories get long; the others are anything. */
    private static Happened draw(Random random, RecordState state) {
        List<RecordEvent> from = new ArrayList<>(random.nextBoolean() ? state.next() : Set.<RecordEvent>of());
        if (from.isEmpty()) {
            from.addAll(List.of(RecordEvent.values()));
        }
        Collections.sort(from);
        RecordEvent event = from.get(random.nextInt(from.size()));
        return new Happened(event, SIGNING.contains(event) && random.nextBoolean());
    }

    private static void assertConsistent(RecordState state, List<Happened> history) {
        assertThat(state.versions()).isEqualTo((int) count(history, SIGNED) + (int) count(history, VERSION_SIGNED));
        assertThat(count(history, SIGNED)).isLessThanOrEqualTo(1);
        if (state.versions() == 0) {
            assertThat(state.counts() || state.versionOpen()).isFalse();
        }
        if (count(history, VOID_CONFIRMED) > 0) {
            assertThat(state.counts()).isFalse();
            assertThat(state.next()).isEmpty();
        }
    }

    private static boolean legal(List<Happened> history, RecordEvent event) {
        boolean signed = count(history, SIGNED) > 0;
        boolean live = signed && count(history, VOID_CONFIRMED) == 0;
        List<Happened> version = sinceLast(history, SIGNING);
        boolean awaited = live && version.get(0).countersign() && count(version, COUNTERSIGNED) == 0;
        boolean writing =
                live && pending(history, EnumSet.of(VERSION_OPENED), EnumSet.of(VERSION_DROPPED, VERSION_SIGNED));
        boolean asked = live && pending(history, EnumSet.of(VOID_ASKED), EnumSet.of(VOID_DECLINED));
        boolean contested = live && pending(history, EnumSet.of(CONTEST_OPENED), CONTEST_ENDS);
        List<Happened> contest = sinceLast(history, EnumSet.of(CONTEST_OPENED));
        boolean replied = count(contest, CONTEST_REPLIED) > 0;
        boolean named = count(contest, REVIEWER_NAMED) > 0;
        return switch (event) {
            case OPENED -> history.isEmpty();
            case LATE_RELEASED -> !history.isEmpty() && !signed && count(history, LATE_RELEASED) == 0;
            case SIGNED -> !history.isEmpty() && !signed;
            case COUNTERSIGNED, COUNTERSIGN_REFUSED -> awaited;
            case ACKNOWLEDGED -> live && count(version, ACKNOWLEDGED) == 0;
            case NOT_ACKNOWLEDGED -> live && count(version, ACKNOWLEDGED) + count(version, NOT_ACKNOWLEDGED) == 0;
            case VERSION_OPENED -> live && !writing;
            case VERSION_DROPPED, VERSION_SIGNED -> writing;
            case VOID_ASKED -> live && !asked;
            case VOID_CONFIRMED, VOID_DECLINED -> asked;
            case CONTEST_OPENED -> live && !contested;
            case CONTEST_REPLIED -> contested && !replied && !named;
            case REVIEWER_NAMED -> contested && !named;
            case CONTEST_UPHELD, CONTEST_NOT_UPHELD -> contested && named;
            case CONTEST_WITHDRAWN -> contested;
        };
    }

    /** Whether the last of these events was one that begins. */
    private static boolean pending(List<Happened> history, Set<RecordEvent> begins, Set<RecordEvent> ends) {
        for (int i = history.size() - 1; i >= 0; i--) {
            RecordEvent event = history.get(i).event();
            if (begins.contains(event) || ends.contains(event)) {
                return begins.contains(event);
            }
        }
        return false;
    }

    private static List<Happened> sinceLast(List<Happened> history, Set<RecordEvent> events) {
        for (int i = history.size() - 1; i >= 0; i--) {
            if (events.contains(history.get(i).event())) {
                return history.subList(i, history.size());
            }
        }
        return List.of();
    }

    private static long count(List<Happened> history, RecordEvent event) {
        return history.stream().filter(happened -> happened.event() == event).count();
    }

    private static RecordState after(RecordEvent... events) {
        return RecordState.after(List.of(events).stream().map(Happened::of).toList());
    }
}
