package org.scrubline.signoff;

import static org.assertj.core.api.Assertions.assertThat;
import static org.scrubline.signoff.RecordFixture.said;

import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.scrubline.casework.Part;
import org.scrubline.casework.SheetChange;
import org.scrubline.casework.SheetFixture;
import org.scrubline.casework.SheetFixture.Theatre;
import org.scrubline.casework.StepState;
import org.scrubline.casework.Supervision;
import org.scrubline.people.SettingKey;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.signoff.RecordState.Happened;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.transaction.support.TransactionTemplate;

/**
 * Random events sent to the real services and, beside them, to the pure model. Whether a service does what is asked, and
 * where the sheet stands afterwards, must be what the model says.
 */
@ScrublineTest
class RecordServicesFuzzTests {

    private static final int RUNS = 100;
    private static final int EVENTS = 9;
    private static final List<RecordEvent> DRAWN = List.of(
            RecordEvent.LATE_RELEASED,
            RecordEvent.SIGNED,
            RecordEvent.COUNTERSIGNED,
            RecordEvent.COUNTERSIGN_REFUSED,
            RecordEvent.ACKNOWLEDGED,
            RecordEvent.NOT_ACKNOWLEDGED);

    @Autowired
    TestOrganisations organisations;

    @Autowired
    SheetFixture sheetFixture;

    @Autowired
    SigningFixture fixture;

    @Autowired
    VersionFixture versions;

    @Autowired
    Signing signing;

    @Autowired
    VersionSigning versionSigning;

    @Autowired
    LateReleaseDesk releases;

    @Autowired
    SignedSheets sheets;

    @Autowired
    RecordHistoryQueries history;

    @Autowired
    TransactionTemplate transaction;

    @Autowired
    Clock clock;

    /** A theatre in which every version needs a countersignature, or none does, with all who may act. */
    private record Cast(Theatre theatre, boolean countersign, SignedIn director, List<SignedIn> seconds) {}

    @Test
    void aHundredRandomHistoriesOfTheServicesAgreeWithTheModel() {
        Random random = new Random(20_261_128);
        List<Cast> casts = List.of(cast(true), cast(false));
        Set<RecordEvent> taken = EnumSet.noneOf(RecordEvent.class);
        for (int run = 0; run < RUNS; run++) {
            Cast cast = casts.get(run % casts.size());
            boolean closed = random.nextInt(3) == 0;
            UUID sheet = ready(cast, closed);
            taken.addAll(new Run(cast, sheet, closed).go(random));
        }
        assertThat(taken).isEqualTo(EnumSet.copyOf(DRAWN));
    }

    /** One sheet and its model. */
    private final class Run {

        private final Cast cast;
        private final UUID sheet;
        private final boolean closed;
        private final Set<String> done = new HashSet<>();
        private RecordState state = RecordState.BEFORE.then(Happened.of(RecordEvent.OPENED));

        Run(Cast cast, UUID sheet, boolean closed) {
            this.cast = cast;
            this.sheet = sheet;
            this.closed = closed;
        }

        Set<RecordEvent> go(Random random) {
            Set<RecordEvent> taken = EnumSet.noneOf(RecordEvent.class);
            List<String> asked = new ArrayList<>();
            for (int i = 0; i < EVENTS; i++) {
                RecordEvent event = DRAWN.get(random.nextInt(DRAWN.size()));
                SignedIn who = actor(event, random);
                asked.add(event + " by " + who.printedName());
                boolean again = !done.add(event + " " + who.personId());
                boolean may = state.allows(event) && inTime(event);
                boolean did = attempt(event, who);
                assertThat(did).as("%s", asked).isEqualTo(may || (again && repeatable(event)));
                if (may) {
                    state = state.then(new Happened(event, event == RecordEvent.SIGNED && cast.countersign()));
                    taken.add(event);
                } else if (!did) {
                    done.remove(event + " " + who.personId());
                }
            }
            assertThat(stored()).as("%s", asked).isEqualTo(state);
            return taken;
        }

        /** Time is no part of the model: a closed sheet takes a release first, another takes none. */
        private boolean inTime(RecordEvent event) {
            return switch (event) {
                case LATE_RELEASED -> closed;
                case SIGNED -> !closed || state.released();
                default -> true;
            };
        }

        /** Saying the same again is answered with the first, except that a signed sheet is closed to nobody any more. */
        private boolean repeatable(RecordEvent event) {
            return event != RecordEvent.LATE_RELEASED || state.versions() == 0;
        }

        private SignedIn actor(RecordEvent event, Random random) {
            return switch (event.parties().iterator().next()) {
                case SCORER -> cast.theatre().supervisor();
                case TRAINEE -> cast.theatre().trainee();
                case DIRECTOR -> cast.director();
                default -> cast.seconds().get(random.nextInt(cast.seconds().size()));
            };
        }

        private boolean attempt(RecordEvent event, SignedIn who) {
            try {
                return cast.theatre().organisation().in(() -> ask(event, who)).fold(value -> true, reasons -> false);
            } catch (NotFound e) {
                return false;
            }
        }

        private Attempt<?> ask(RecordEvent event, SignedIn who) {
            return switch (event) {
                case LATE_RELEASED -> releases.release(who, sheet, said("For this test."));
                case SIGNED -> signing.signWithoutCredential(who, sheet);
                default -> {
                    SignedSheet version = sheets.ofSheet(sheet).orElseThrow(NotFound::new);
                    yield versionSigning.signWithoutCredential(
                            who, new VersionSigning.Said(event, version.id(), version.contentHash(), "For this test."));
                }
            };
        }

        private RecordState stored() {
            return cast.theatre().organisation().in(() -> transaction.execute(status -> history.state(sheet)));
        }
    }

    private Cast cast(boolean countersign) {
        Theatre theatre = sheetFixture.theatre(organisations);
        versions.set(theatre, SettingKey.NEW_SCORER_UNTIL, countersign ? SettingKey.NEW_SCORER_UNTIL.most() : 0);
        return new Cast(
                theatre,
                countersign,
                theatre.organisation().join("Corisande Delmarr", Role.DIRECTOR),
                List.of(
                        theatre.organisation().join("Ottilie Brannock", Role.SUPERVISOR),
                        theatre.organisation().join("Ludo Karsenmark", Role.SUPERVISOR)));
    }

    /** A sheet that can be signed, without a verdict, so that only the setting decides about countersigning. */
    private UUID ready(Cast cast, boolean closed) {
        Duration ago = closed ? Duration.ofDays(15) : Duration.ofHours(2);
        UUID sheet = fixture.blank(cast.theatre(), clock.instant().minus(ago));
        fixture.change(
                cast.theatre(),
                sheet,
                new SheetChange.All(List.of(
                        new SheetChange.ConfirmRole(Part.WHOLE_CASE, Supervision.SCRUBBED),
                        new SheetChange.SetBlankSteps(null, new StepState.NotSeen()))));
        return sheet;
    }
}
