package org.scrubline.committee;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.EnumSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scrubline.committee.CommitteeFixture.Board;
import org.scrubline.committee.DecisionFile.Appeal;
import org.scrubline.entitlement.EntitlementLevel;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.SignedIn;
import org.scrubline.support.History;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.springframework.beans.factory.annotation.Autowired;

/**
 * Random sequences of what can happen to a meeting, a decision and its appeal against the real services: what a model
 * written out here allows is done, what it does not is refused or not there.
 */
@ScrublineTest
class CommitteeSequenceTests {

    private static final int SEQUENCES = 12;
    private static final int LENGTH = 30;

    @Autowired
    TestOrganisations organisations;

    @Autowired
    History history;

    @Autowired
    CommitteeFixture fixture;

    @Autowired
    Meetings meetings;

    @Autowired
    Packs packs;

    @Autowired
    DecisionDesk desk;

    @Autowired
    Decisions decisions;

    @Autowired
    ActDesk acts;

    Board board;
    UUID trainee;
    List<UUID> panel;
    SignedIn hearer;
    int words;

    /** What can be tried. */
    enum Deed {
        FREEZE,
        OPEN,
        PRESENCE,
        WRITE,
        DROP,
        SIGN,
        CLOSE,
        CANCEL,
        LETTER,
        APPEAL,
        PANEL,
        UPHOLD,
        NOT_UPHOLD,
        END
    }

    /** Deeds after which little else can happen. */
    private static final Set<Deed> RARE = EnumSet.of(Deed.DROP, Deed.CLOSE, Deed.CANCEL, Deed.END);

    @BeforeEach
    void openAProgramme() {
        board = fixture.board(organisations, history, 0);
        trainee = board.trainee().personId();
        panel = board.supervisors().stream().map(SignedIn::personId).limit(3).toList();
        hearer = board.supervisors().get(0);
    }

    @Test
    void randomSequencesAgreeWithTheModel() {
        Random random = new Random(20_261_128);
        Set<Deed> done = EnumSet.noneOf(Deed.class);
        Set<Deed> refused = EnumSet.noneOf(Deed.class);
        for (int run = 0; run < SEQUENCES; run++) {
            Run sequence = new Run(fixture.planned(board).id());
            for (int step = 0; step < LENGTH; step++) {
                Deed deed = sequence.draw(random);
                boolean allowed = sequence.allows(deed);
                assertThat(sequence.attempt(deed)).as("run %d: %s", run, deed).isEqualTo(allowed);
                (allowed ? done : refused).add(deed);
                if (allowed) {
                    sequence.happened(deed);
                    sequence.assertAgrees();
                }
            }
        }
        assertThat(done).containsExactlyInAnyOrder(Deed.values());
        assertThat(refused).contains(Deed.SIGN, Deed.APPEAL, Deed.PANEL, Deed.UPHOLD, Deed.FREEZE, Deed.CLOSE);
    }

    /** One meeting about one trainee, and the model of it. */
    private class Run {

        final UUID meeting;
        MeetingState state = MeetingState.PLANNED;
        boolean frozen;
        boolean present;
        boolean written;
        boolean votesWritten;
        UUID decision;
        boolean letter;
        Appeal appeal = Appeal.NONE;

        Run(UUID meeting) {
            this.meeting = meeting;
        }

        /** Most draws are among what may happen, so that sequences get far. */
        Deed draw(Random random) {
            List<Deed> from = List.of(Deed.values()).stream()
                    .filter(deed ->
                            allows(deed) ? !RARE.contains(deed) || random.nextInt(8) == 0 : random.nextInt(14) == 0)
                    .toList();
            return from.isEmpty() ? Deed.FREEZE : from.get(random.nextInt(from.size()));
        }

        boolean allows(Deed deed) {
            return switch (deed) {
                case FREEZE -> state.ahead() && !frozen;
                case OPEN, CANCEL -> state == MeetingState.PLANNED;
                case PRESENCE -> state == MeetingState.OPEN;
                case WRITE -> state == MeetingState.OPEN && frozen;
                case DROP -> frozen;
                case SIGN -> state == MeetingState.OPEN && written && votesWritten && decision == null;
                case CLOSE -> state == MeetingState.OPEN && !written;
                case LETTER -> decision != null;
                case APPEAL -> decision != null && appeal == Appeal.NONE;
                case PANEL -> appeal.waits();
                case UPHOLD, NOT_UPHOLD -> appeal == Appeal.HEARD;
                case END -> appeal.waits();
            };
        }

        boolean attempt(Deed deed) {
            try {
                return board.in(() -> tried(deed)).fold(value -> true, reasons -> false);
            } catch (NotFound notThere) {
                return false;
            }
        }

        private Attempt<?> tried(Deed deed) {
            String why = "These are the words of statement " + ++words + ".";
            return switch (deed) {
                case FREEZE -> packs.freeze(board.director(), meeting, trainee);
                case OPEN -> meetings.move(board.chair(), meeting, MeetingState.OPEN);
                case CLOSE -> meetings.move(board.chair(), meeting, MeetingState.CLOSED);
                case CANCEL -> meetings.move(board.director(), meeting, MeetingState.CANCELLED);
                case PRESENCE -> meetings.presence(board.chair(), meeting, Set.copyOf(board.invited()));
                case WRITE -> desk.write(board.chair(), meeting, trainee, draft());
                case DROP -> dropped();
                case SIGN -> signed();
                case LETTER -> acts.letter(board.administrator(), decision());
                case APPEAL -> acts.say(board.trainee(), decision(), ActKind.APPEALED, why);
                case PANEL -> acts.panel(board.director(), decision(), panel, why);
                case UPHOLD -> acts.say(hearer, decision(), ActKind.APPEAL_UPHELD, why);
                case NOT_UPHOLD -> acts.say(hearer, decision(), ActKind.APPEAL_NOT_UPHELD, why);
                case END -> acts.say(board.trainee(), decision(), ActKind.APPEAL_ENDED, why);
            };
        }

        private DecisionDraft draft() {
            packs.read(board.chair(), meeting, trainee);
            return fixture.draft(board, meetings.read(board.chair(), meeting), EntitlementLevel.values()[words % 2]);
        }

        private Attempt<?> dropped() {
            desk.drop(board.chair(), meeting, trainee);
            return Attempt.done(meeting);
        }

        private Attempt<Decision> signed() {
            Attempt<Decision> attempt = desk.sign(board.chair(), meeting, trainee, null, null);
            if (attempt instanceof Attempt.Done<Decision> done) {
                decision = done.value().id();
            }
            return attempt;
        }

        private UUID decision() {
            return decision == null ? UUID.randomUUID() : decision;
        }

        void happened(Deed deed) {
            switch (deed) {
                case FREEZE -> frozen = true;
                case OPEN -> state = MeetingState.OPEN;
                case CLOSE -> state = MeetingState.CLOSED;
                case CANCEL -> state = MeetingState.CANCELLED;
                case PRESENCE -> present = true;
                case WRITE -> {
                    written = true;
                    votesWritten = present;
                }
                case DROP, SIGN -> written = false;
                case LETTER -> letter = true;
                case APPEAL -> appeal = Appeal.OPEN;
                case PANEL -> appeal = Appeal.HEARD;
                case UPHOLD -> appeal = Appeal.UPHELD;
                case NOT_UPHOLD -> appeal = Appeal.NOT_UPHELD;
                case END -> appeal = Appeal.ENDED;
            }
        }

        void assertAgrees() {
            assertThat(board.in(() -> meetings.read(board.director(), meeting)).state())
                    .isEqualTo(state);
            assertThat(board.in(() -> packs.frozen(board.director(), meeting))).hasSize(frozen ? 1 : 0);
            if (frozen) {
                assertThat(board.in(() -> decisions.draft(board.director(), meeting, trainee))
                                .isPresent())
                        .isEqualTo(written);
            }
            if (decision != null) {
                DecisionFile file = board.in(() -> decisions.read(board.director(), decision));
                assertThat(file.appeal()).isEqualTo(appeal);
                assertThat(file.letter().isPresent()).isEqualTo(letter);
            }
        }
    }
}
