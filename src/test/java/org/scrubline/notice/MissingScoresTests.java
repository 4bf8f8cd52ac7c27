package org.scrubline.notice;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalTime;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Supplier;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scrubline.casework.SheetFixture;
import org.scrubline.casework.SheetFixture.Theatre;
import org.scrubline.casework.Sheets;
import org.scrubline.platform.Role;
import org.scrubline.platform.ScrublineClock;
import org.scrubline.platform.SignedIn;
import org.scrubline.rubric.Procedures;
import org.scrubline.signoff.SigningFixture;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.SmtpReceiver;
import org.scrubline.support.TestOrganisations;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.beans.factory.support.StaticListableBeanFactory;
import org.springframework.context.MessageSource;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.mail.javamail.JavaMailSender;
import org.springframework.mail.javamail.JavaMailSenderImpl;
import org.springframework.transaction.support.TransactionTemplate;

/** Scores that have not come are reminded of once a stage, never at night and never to the wrong person. */
@ScrublineTest
class MissingScoresTests {

    /** A Thursday noon in winter: London's clocks show UTC. */
    private static final Instant ENDED = Instant.parse("2026-01-08T12:00:00Z");

    private static final NoticeSettings BY_MAIL =
            new NoticeSettings(LocalTime.of(20, 0), LocalTime.of(7, 0), 9, true, "ward@hospital.example");

    @Autowired
    MissingScores scores;

    @Autowired
    DigestDesk desk;

    @Autowired
    MessageSource messages;

    @Autowired
    Reminders reminders;

    @Autowired
    Sheets sheets;

    @Autowired
    SheetFixture fixture;

    @Autowired
    SigningFixture signing;

    @Autowired
    TestOrganisations organisations;

    @Autowired
    ScrublineClock clock;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    TransactionTemplate transaction;

    Theatre theatre;
    UUID sheet;
    SmtpReceiver mailServer;

    @BeforeEach
    void openASheet() throws Exception {
        theatre = fixture.theatre(organisations);
        sheet = fixture.open(theatre, Procedures.TRAB_FORNIX, ENDED);
        mailServer = new SmtpReceiver();
    }

    @AfterEach
    void close() throws Exception {
        mailServer.close();
    }

    @Test
    void eachStageMakesOneNoticeHoweverOftenTheJobRuns() {
        remind(hours(24).minusMillis(1));
        assertThat(stages()).isEmpty();
        for (Instant at : List.of(hours(24), hours(24), hours(48), hours(72), hours(74), hours(288), hours(360))) {
            remind(at);
        }
        assertThat(stages()).containsExactly("NUDGE", "LATE", "CLOSING");
        assertThat(reached()).containsExactly(Map.entry(sheet, Stage.CLOSING));
    }

    @Test
    void aServerThatWasAwayRemindsOfTheLastStageAlone() {
        remind(hours(76));
        assertThat(stages()).containsExactly("LATE");
    }

    @Test
    void nothingComesInQuietHoursAndWhatWasDueComesAfterThem() {
        Instant evening = Instant.parse("2026-01-08T21:00:00Z");
        UUID late = fixture.open(theatre, Procedures.TRAB_FORNIX, evening);
        remind(evening.plus(Duration.ofHours(24)));
        remind(Instant.parse("2026-01-10T06:59:00Z"));
        assertThat(reached()).as("the first case was due by day").doesNotContainKey(late);
        remind(Instant.parse("2026-01-10T07:00:00Z"));
        assertThat(reached()).containsEntry(late, Stage.NUDGE);
    }

    @Test
    void aSheetThatIsSignedOrVoidRemindsNobody() {
        UUID signed = signing.complete(theatre, ENDED);
        markSigned(signed);
        UUID dead = fixture.open(theatre, Procedures.TRAB_FORNIX, ENDED);
        in(() -> transaction.execute(status -> jdbc.sql("update score_sheet set state = 'VOID' where id = :id")
                .param("id", dead)
                .update()));
        remind(hours(76));
        assertThat(reached()).containsOnlyKeys(sheet);
        markSigned(sheet);
        assertThat(reached()).as("a reminder goes with its score").isEmpty();
    }

    @Test
    void somebodyWhoLeftIsNotReminded() {
        in(() -> transaction.execute(status -> jdbc.sql("update person set active = false where id = :id")
                .param("id", theatre.supervisor().personId())
                .update()));
        remind(hours(76));
        assertThat(stages()).isEmpty();
    }

    @Test
    void oneMailADayHoldsCountsAndALinkAndNobodysName() {
        in(() -> reminders.change(theatre.supervisor(), BY_MAIL).orThrow());
        fixture.open(theatre, Procedures.TRAB_FORNIX, ENDED.minus(Duration.ofHours(60)));
        remind(hours(24));
        for (int hour = 1; hour < 6; hour++) {
            send(hours(24).plus(Duration.ofHours(hour)));
        }
        assertThat(mailServer.received()).hasSize(1);
        assertThat(mailServer.received().get(0))
                .contains("RCPT TO:<ward@hospital.example>", "Auto-Submitted: auto-generated")
                .contains("Score sheets that wait for you: 2", "a day old: 1", "late: 1", "/reminders")
                .doesNotContain("Hallinor", "Verrin", "K7-");
        remind(hours(72));
        send(Instant.parse("2026-01-12T08:59:00Z"));
        assertThat(mailServer.received()).as("before the hour chosen").hasSize(1);
        send(Instant.parse("2026-01-12T09:00:00Z"));
        assertThat(mailServer.received()).hasSize(2);
        assertThat(mailServer.received().get(1)).contains("Score sheets that wait for you: 1", "late: 1");
    }

    @Test
    void noMailGoesToWhoWantsNoneNorAboutWhatIsDone() {
        remind(hours(24));
        send(hours(24));
        in(() -> reminders.change(theatre.supervisor(), BY_MAIL).orThrow());
        markSigned(sheet);
        send(hours(24));
        assertThat(mailServer.received()).isEmpty();
    }

    @Test
    void aMailThatWasNotTakenIsSentAtTheNextRun() throws Exception {
        in(() -> reminders.change(theatre.supervisor(), BY_MAIL).orThrow());
        remind(hours(24));
        int port = mailServer.port();
        mailServer.close();
        clock.at(
                hours(24),
                () -> in(() -> {
                    digests(port).send();
                    return true;
                }));
        mailServer = new SmtpReceiver();
        send(hours(24).plus(Duration.ofMinutes(15)));
        assertThat(mailServer.received()).hasSize(1);
    }

    @Test
    void anAddressThatCouldHoldMoreThanOneIsRefused() {
        SignedIn who = theatre.supervisor();
        List<String> wrong = List.of("", "ward", "a@b\r\nBcc: c@d", "a@b,c@d", "a b@c", "x".repeat(300) + "@a.b");
        for (String address : wrong) {
            NoticeSettings wanted = new NoticeSettings(LocalTime.MIDNIGHT, LocalTime.MIDNIGHT, 7, true, address);
            assertThat(in(() -> reminders.change(who, wanted))
                            .<String>fold(
                                    kept -> "kept", reasons -> reasons.get(0).messageKey()))
                    .as(address)
                    .isEqualTo("notice.refusal.address");
        }
    }

    @Test
    void aSheetHandedOnCountsForItsNewScorerFromTheNextStage() {
        SignedIn second = theatre.organisation().join("Bela Castor", Role.SUPERVISOR);
        remind(hours(24));
        in(() -> transaction.execute(status -> jdbc.sql("update score_sheet set scorer_id = :to where id = :id")
                .param("to", second.personId())
                .param("id", sheet)
                .update()));
        assertThat(reached()).isEmpty();
        remind(hours(72));
        assertThat(in(() -> reminders.of(second.personId()))).containsEntry(sheet, Stage.LATE);
    }

    private void markSigned(UUID id) {
        in(() -> transaction.execute(
                status -> sheets.markSigned(id, sheets.get(id).lockVersion())));
    }

    private void remind(Instant at) {
        clock.at(
                at,
                () -> in(() -> {
                    scores.remind();
                    return true;
                }));
    }

    private void send(Instant at) {
        clock.at(
                at,
                () -> in(() -> {
                    digests(mailServer.port()).send();
                    return true;
                }));
    }

    private Digests digests(int port) {
        JavaMailSenderImpl sender = new JavaMailSenderImpl();
        sender.setHost("127.0.0.1");
        sender.setPort(port);
        StaticListableBeanFactory beans = new StaticListableBeanFactory(Map.of("sender", sender));
        Mail mail = new Mail(beans.getBeanProvider(JavaMailSender.class), "scrubline@localhost");
        return new Digests(desk, mail, messages, "http://localhost:8080");
    }

    private Map<UUID, Stage> reached() {
        return in(() -> reminders.of(theatre.supervisor().personId()));
    }

    private List<String> stages() {
        return in(() -> transaction.execute(
                status -> jdbc.sql("select stage from notice where sheet_id = :sheet order by made_at")
                        .param("sheet", sheet)
                        .query(String.class)
                        .list()));
    }

    private <T> T in(Supplier<T> work) {
        return theatre.organisation().in(work);
    }

    private static Instant hours(long hours) {
        return ENDED.plus(Duration.ofHours(hours));
    }
}
