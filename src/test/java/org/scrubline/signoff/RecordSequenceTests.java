package org.scrubline.signoff;

import static org.assertj.core.api.Assertions.assertThat;
import static org.scrubline.signoff.RecordFixture.said;

import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scrubline.casework.SheetChange;
import org.scrubline.casework.SheetFixture;
import org.scrubline.casework.SheetFixture.Theatre;
import org.scrubline.casework.SheetState;
import org.scrubline.casework.StepState;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.signoff.RecordState.Happened;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.springframework.beans.factory.annotation.Autowired;

/**
 * Random sequences of new versions, voids and contests against the real services: what the model of {@link RecordState}
 * allows is done, what it does not is refused or not there. Each statement has words of its own, so that nothing passes
 * for a repetition.
 */
@ScrublineTest
class RecordSequenceTests {

    private static final int SEQUENCES = 100;
    private static final int LENGTH = 14;
    private static final List<RecordEvent> EVENTS = List.of(
            RecordEvent.VERSION_OPENED,
            RecordEvent.VERSION_DROPPED,
            RecordEvent.VERSION_SIGNED,
            RecordEvent.VOID_ASKED,
            RecordEvent.VOID_CONFIRMED,
            RecordEvent.VOID_DECLINED,
            RecordEvent.CONTEST_OPENED,
            RecordEvent.CONTEST_REPLIED,
            RecordEvent.REVIEWER_NAMED,
            RecordEvent.CONTEST_UPHELD,
            RecordEvent.CONTEST_NOT_UPHELD,
            RecordEvent.CONTEST_WITHDRAWN);

    @Autowired
    TestOrganisations organisations;

    @Autowired
    SheetFixture sheetFixture;

    @Autowired
    SigningFixture fixture;

    @Autowired
    RecordFixture acts;

    @Autowired
    VersionDesk versions;

    @Autowired
    VoidDesk voids;

    @Autowired
    ContestDesk contests;

    @Autowired
    ContestDecisions decisions;

    @Autowired
    Signing signing;

    @Autowired
    SignedSheets signedSheets;

    @Autowired
    Clock clock;

    Theatre theatre;
    SignedIn director;
    List<SignedIn> reviewers;
    int words;

    @BeforeEach
    void openATheatre() {
        theatre = sheetFixture.theatre(organisations);
        director = theatre.organisation().join("Mirabel Osk", Role.DIRECTOR);
        reviewers = List.of("Ottilie Brannock", "Corin Vale", "Ismay Tolverin", "Jorun Peddelay").stream()
                .map(name -> theatre.organisation().join(name, Role.SUPERVISOR))
                .toList();
    }

    @Test
    void aHundredRandomSequencesAgreeWithTheModel() {
        Random random = new Random(20_261_128);
        Set<RecordEvent> done = EnumSet.noneOf(RecordEvent.class);
        Set<RecordEvent> refused = EnumSet.noneOf(RecordEvent.class);
        for (int run = 0; run < SEQUENCES; run++) {
            Run sequence = new Run(signed());
            for (int step = 0; step < LENGTH; step++) {
                RecordEvent event = sequence.draw(random);
                boolean allowed = sequence.allows(event);
                assertThat(sequence.attempt(event))
                        .as("run %d: %s after %s", run, event, sequence.history)
                        .isEqualTo(allowed);
                (allowed ? done : refused).add(event);
                if (allowed) {
                    sequence.happened(event);
                    sequence.assertAgrees();
                }
            }
        }
        assertThat(done).containsExactlyInAnyOrderElementsOf(EVENTS);
        assertThat(refused).containsExactlyInAnyOrderElementsOf(EVENTS);
    }

    private SignedSheet signed() {
        UUID sheet = fixture.blank(theatre, clock.instant().minus(Duration.ofHours(3)));
        fixture.confirmRole(theatre, sheet);
        fixture.change(theatre, sheet, new SheetChange.SetBlankSteps(null, new StepState.NotSeen()));
        return theatre.organisation()
                .in(() -> signing.signWithoutCredential(theatre.supervisor(), sheet)
                        .orThrow());
    }

    /** One sheet, the model of it, and who is who. */
    private class Run {

        final SignedSheet first;
        final List<RecordEvent> history = new ArrayList<>();
        RecordState state =
                RecordState.after(List.of(Happened.of(RecordEvent.OPENED), Happened.of(RecordEvent.SIGNED)));
        SignedIn writer = theatre.supervisor();
        SignedIn signer = theatre.supervisor();
        SignedIn named = reviewers.get(0);
        final Set<SignedIn> signers = new HashSet<>();
        SignedIn contestedScorer = theatre.supervisor();
        UUID contest = UUID.randomUUID();

        Run(SignedSheet first) {
            this.first = first;
        }

        /** Two of three draws are among what may happen, so that histories get long. */
        RecordEvent draw(Random random) {
            List<RecordEvent> from = EVENTS.stream()
                    .filter(event -> random.nextInt(3) == 0 || state.allows(event))
                    .toList();
            return from.isEmpty() ? EVENTS.get(random.nextInt(EVENTS.size())) : from.get(random.nextInt(from.size()));
        }

        /** The supervisor has the first word: before the reply no reviewer is named on the first day. */
        boolean allows(RecordEvent event) {
            boolean waits = event == RecordEvent.REVIEWER_NAMED && state.contest() == RecordState.Contest.OPEN;
            return state.allows(event) && !waits;
        }

        boolean attempt(RecordEvent event) {
            String why = "These are the words of statement " + ++words + ".";
            try {
                return theatre.organisation().in(() -> attempt(event, why)).fold(done -> true, reasons -> false);
            } catch (NotFound e) {
                return false;
            }
        }

        private Attempt<?> attempt(RecordEvent event, String why) {
            return switch (event) {
                case VERSION_OPENED -> versions.open(writer, first.id(), why);
                case VERSION_DROPPED -> dropped();
                case VERSION_SIGNED -> signed();
                case VOID_ASKED -> voids.ask(signer, first.id(), VoidGround.OTHER, said(why));
                case VOID_CONFIRMED -> voids.decide(director, first.id(), true, said(why));
                case VOID_DECLINED -> voids.decide(director, first.id(), false, said(why));
                case CONTEST_OPENED -> opened(why);
                case CONTEST_REPLIED -> contests.reply(contestedScorer, contest, said(why));
                case REVIEWER_NAMED -> named(why);
                case CONTEST_UPHELD -> decisions.decide(named, contest, true, said(why));
                case CONTEST_NOT_UPHELD -> decisions.decide(named, contest, false, said(why));
                case CONTEST_WITHDRAWN -> decisions.withdraw(theatre.trainee(), contest, said(why));
                default -> throw new IllegalArgumentException(event.name());
            };
        }

        /** Dropping nothing is no event. */
        private Attempt<?> dropped() {
            if (fixture.read(theatre, first.sheetId()).state() != SheetState.REOPENED) {
                throw new NotFound();
            }
            versions.drop(writer, first.id());
            return Attempt.done(first);
        }

        /** Signing again what is signed is answered, but no event. */
        private Attempt<?> signed() {
            if (fixture.read(theatre, first.sheetId()).state() == SheetState.SIGNED) {
                throw new NotFound();
            }
            return signing.signWithoutCredential(writer, first.sheetId());
        }

        private Attempt<Statement> opened(String why) {
            Attempt<Statement> attempt = contests.open(theatre.trainee(), first.id(), List.of(), said(why));
            if (attempt instanceof Attempt.Done<Statement> done) {
                contest = done.value().id();
                contestedScorer = signer;
            }
            return attempt;
        }

        /** Somebody who is not reviewing already and has signed no version. */
        private Attempt<Statement> named(String why) {
            SignedIn next = reviewers.stream()
                    .filter(one -> !one.equals(named) && !signers.contains(one))
                    .findFirst()
                    .orElseThrow();
            Attempt<Statement> attempt = contests.nameReviewer(director, contest, next.personId(), said(why));
            if (attempt instanceof Attempt.Done<Statement>) {
                named = next;
            }
            return attempt;
        }

        void happened(RecordEvent event) {
            state = state.then(Happened.of(event));
            history.add(event);
            if (event == RecordEvent.CONTEST_UPHELD) {
                writer = named;
            } else if (event == RecordEvent.VERSION_SIGNED) {
                signer = writer;
                signers.add(writer);
            }
        }

        void assertAgrees() {
            RecordHistory read = acts.history(theatre, director, first.id());
            assertThat(read.versions()).hasSize(state.versions());
            assertThat(read.open().isPresent()).isEqualTo(state.versionOpen());
            assertThat(read.voided().isPresent()).isEqualTo(state.voiding() == RecordState.Voiding.VOID);
            assertThat(read.voidWaiting().isPresent()).isEqualTo(state.voiding() == RecordState.Voiding.ASKED);
            assertThat(read.contests().stream().anyMatch(ContestFile::open))
                    .isEqualTo(state.contest() != RecordState.Contest.NONE);
            assertThat(theatre.organisation()
                            .in(() -> signedSheets.ofSheet(first.sheetId()))
                            .map(SignedSheet::versionNo))
                    .isEqualTo(state.counts() ? Optional.of(state.versions()) : Optional.<Integer>empty());
        }
    }
}
