package org.scrubline.doors;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import jakarta.mail.Header;
import jakarta.mail.internet.MimeMessage;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalTime;
import java.util.Collections;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scrubline.access.HostileText;
import org.scrubline.casework.SheetChange;
import org.scrubline.casework.SheetFixture;
import org.scrubline.casework.SheetFixture.Theatre;
import org.scrubline.notice.NoticeSettings;
import org.scrubline.notice.Reminders;
import org.scrubline.platform.Role;
import org.scrubline.platform.ScrublineClock;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.jobs.JobsNow;
import org.scrubline.platform.jobs.QueuedJob;
import org.scrubline.platform.jobs.RecurringJob;
import org.scrubline.signoff.SigningFixture;
import org.scrubline.support.TestOrganisations;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.MockMvc;

/** Hostile text in names, feedback and the name of a browser, and every mail its owner gets: plain text that holds none of it. */
@DoorsTest
class HostileMailTests {

    /** A Thursday noon in winter: London's clocks show UTC. */
    private static final Instant ENDED = Instant.parse("2026-01-08T12:00:00Z");

    private static final String RUN = "<img src=x onerror=window.canary=true>";

    @Autowired
    MockMvc mockMvc;

    @Autowired
    TestOrganisations organisations;

    @Autowired
    SheetFixture sheets;

    @Autowired
    SigningFixture signing;

    @Autowired
    Reminders reminders;

    @Autowired
    List<QueuedJob> queued;

    @Autowired
    List<RecurringJob> recurring;

    @Autowired
    JobsNow jobs;

    @Autowired
    ScrublineClock clock;

    @Autowired
    JdbcClient jdbc;

    Theatre theatre;
    SignedIn owner;
    String address;
    ProviderBrowser browser;

    @BeforeEach
    void join() throws Exception {
        Theatre quiet = sheets.theatre(organisations);
        owner = quiet.organisation().join("Ottilie " + RUN + " Brannock", Role.SUPERVISOR);
        theatre = new Theatre(
                quiet.organisation(), owner, quiet.organisation().join("Fenna " + RUN + " Hallinor", Role.TRAINEE));
        address = "h" + UUID.randomUUID().toString().substring(0, 8) + "@hospital.example";
        browser = new ProviderBrowser(mockMvc);
        logIn(browser, "Mozilla/5.0 (X11; Linux) Firefox/140.0");
    }

    /** A code is asked for in every organisation of the database that all tests share. */
    @AfterEach
    void takeOffTheQueue() {
        jdbc.sql("delete from scheduled_tasks where task_name = 'account-mail'").update();
    }

    @Test
    void noMailHoldsATextOfSomebody() throws Exception {
        browser.send(post("/account/address").param("address", address));
        deliver();
        browser.send(post("/account/address/confirm").param("code", newest()));
        browser.send(post("/account/address").param("address", "next" + address));
        NoticeSettings byMail = new NoticeSettings(LocalTime.of(20, 0), LocalTime.of(7, 0), 9, true, address);
        theatre.organisation().in(() -> reminders.change(owner, byMail).orThrow());
        logIn(new ProviderBrowser(mockMvc), "Chrome/140.0 Windows " + RUN);
        deliver();
        scoreThatHasNotCome();
        browser.send(post("/login/help").param("name", owner.username()));
        deliver();
        browser.send(post("/login/new-password").param("code", newest()).param("password", "nine herons on the quay"))
                .andExpect(redirectedUrl("/login?ready"));
        deliver();

        List<MimeMessage> mails = RunningMailServer.to(address).stream()
                .map(HostileMailTests::parsed)
                .toList();
        assertThat(mails)
                .extracting(MimeMessage::getSubject)
                .containsExactly(
                        "A code that confirms your address",
                        "A new address was entered in your account",
                        "A log-in from a new kind of device",
                        "Scores that have not come",
                        "A code for choosing a new password",
                        "A new password was chosen for your account");
        for (MimeMessage mail : mails) {
            holdsNothing(mail);
        }
    }

    @Test
    void noTextOfSomebodyIsAnAddress() throws Exception {
        for (String text : HostileText.payloads()) {
            browser.send(post("/account/address").param("address", text + "@hospital.example"))
                    .andExpect(status().isUnprocessableContent());
        }
        deliver();
        assertThat(RunningMailServer.to(address)).isEmpty();
    }

    private void logIn(ProviderBrowser with, String userAgent) throws Exception {
        with.send(post("/login")
                        .header("User-Agent", userAgent)
                        .param("username", owner.username())
                        .param("password", TestOrganisations.PASSWORD))
                .andExpect(redirectedUrl("/"));
    }

    private void scoreThatHasNotCome() {
        UUID sheet = signing.complete(theatre, ENDED);
        signing.change(theatre, sheet, new SheetChange.SetFeedback(RUN + " steady hands", RUN + " hold it flatter"));
        RecurringJob missing = recurring.stream()
                .filter(job -> job.name().equals("missing-scores"))
                .findFirst()
                .orElseThrow();
        clock.at(
                ENDED.plus(Duration.ofHours(25)),
                () -> theatre.organisation().in(() -> {
                    missing.run();
                    return true;
                }));
    }

    private void deliver() {
        queued.forEach(job -> jobs.runWaiting(theatre.organisation().tenant(), job));
    }

    private String newest() {
        List<String> mails = RunningMailServer.to(address);
        return RunningMailServer.code(mails.get(mails.size() - 1));
    }

    private static MimeMessage parsed(String received) {
        try {
            String message = received.substring(received.indexOf("DATA\n") + "DATA\n".length());
            return new MimeMessage(null, new ByteArrayInputStream(message.getBytes(StandardCharsets.UTF_8)));
        } catch (jakarta.mail.MessagingException e) {
            throw new AssertionError(e);
        }
    }

    private static void holdsNothing(MimeMessage mail) throws Exception {
        assertThat(mail.isMimeType("text/plain")).isTrue();
        assertThat((String) mail.getContent()).doesNotContain("canary", "<", "Brannock", "Hallinor");
        assertThat(Collections.list(mail.getAllHeaders()))
                .extracting(Header::getValue)
                .allSatisfy(value -> assertThat(value).doesNotContain("canary", "Brannock", "Hallinor"));
    }
}
