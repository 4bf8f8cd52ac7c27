package org.scrubline.notice;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalTime;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scrubline.people.FactorCleared;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.jobs.JobQueue;
import org.scrubline.platform.jobs.JobsNow;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.SmtpReceiver;
import org.scrubline.support.TestOrganisations;
import org.scrubline.support.TestOrganisations.TestOrganisation;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.beans.factory.support.StaticListableBeanFactory;
import org.springframework.context.MessageSource;
import org.springframework.mail.javamail.JavaMailSender;
import org.springframework.mail.javamail.JavaMailSenderImpl;

@ScrublineTest
class FactorClearedMailTests {

    @Autowired
    TestOrganisations organisations;

    @Autowired
    Reminders reminders;

    @Autowired
    JobQueue queue;

    @Autowired
    JobsNow jobs;

    @Autowired
    MessageSource messages;

    TestOrganisation organisation;
    SignedIn owner;
    SmtpReceiver mailServer;

    @BeforeEach
    void join() throws Exception {
        organisation = organisations.open();
        owner = organisation.join("Ansel Verrin", Role.SUPERVISOR);
        mailServer = new SmtpReceiver();
        NoticeSettings settings =
                new NoticeSettings(LocalTime.of(20, 0), LocalTime.of(7, 0), 9, false, "ward@hospital.example");
        organisation.in(() -> reminders.change(owner, settings).orThrow());
    }

    @AfterEach
    void close() throws Exception {
        mailServer.close();
    }

    @Test
    void theOwnerIsToldOnceItIsDone() {
        FactorClearedMail mail = mail(true);
        tell(mail, "factor-cleared");
        jobs.runWaiting(organisation.tenant(), mail);
        assertThat(mailServer.received())
                .singleElement()
                .asString()
                .contains("ward@hospital.example", "second factor", "/account/password")
                .doesNotContain("Verrin")
                .doesNotContain("staff card");
    }

    @Test
    void askingAloneOrLeavingItTellsNobody() {
        FactorClearedMail mail = mail(true);
        tell(mail, "factor-clearing-asked");
        tell(mail, "factor-clearing-dropped");
        assertThat(jobs.waiting(organisation.tenant(), mail)).isEmpty();
    }

    @Test
    void withoutAMailServerNothingIsQueued() {
        FactorClearedMail none = mail(false);
        tell(none, "factor-cleared");
        assertThat(jobs.waiting(organisation.tenant(), none)).isEmpty();
    }

    private void tell(FactorClearedMail to, String action) {
        organisation.in(() -> {
            to.cleared(new FactorCleared(action, owner.personId(), owner.printedName(), "Came with the staff card."));
            return true;
        });
    }

    private FactorClearedMail mail(boolean set) {
        JavaMailSenderImpl sender = new JavaMailSenderImpl();
        sender.setHost("127.0.0.1");
        sender.setPort(mailServer.port());
        StaticListableBeanFactory beans = new StaticListableBeanFactory(set ? Map.of("sender", sender) : Map.of());
        Mail to = new Mail(beans.getBeanProvider(JavaMailSender.class), "scrubline@hospital.example");
        return new FactorClearedMail(new OwnerMail(reminders, to, messages, "https://scrubline.example"), queue);
    }
}
