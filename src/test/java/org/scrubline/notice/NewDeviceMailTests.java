package org.scrubline.notice;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalTime;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scrubline.platform.Device;
import org.scrubline.platform.NewDevice;
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
class NewDeviceMailTests {

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
    SignedIn supervisor;
    SmtpReceiver mailServer;
    NewDeviceMail mail;

    @BeforeEach
    void join() throws Exception {
        organisation = organisations.open();
        supervisor = organisation.join("Ansel Verrin", Role.SUPERVISOR);
        mailServer = new SmtpReceiver();
        mail = mail(true);
    }

    @AfterEach
    void close() throws Exception {
        mailServer.close();
    }

    @Test
    void theOwnerIsToldAtTheAddressTheyGave() {
        address("ward@hospital.example");
        tell(mail);
        assertThat(jobs.waiting(organisation.tenant(), mail))
                .containsExactly(supervisor.personId().toString());
        jobs.runWaiting(organisation.tenant(), mail);
        assertThat(mailServer.received())
                .singleElement()
                .asString()
                .contains("ward@hospital.example", "new kind of device", "/account/sessions")
                .doesNotContain("Verrin")
                .doesNotContain(supervisor.username());
    }

    @Test
    void whoGaveNoAddressGetsNoMail() {
        tell(mail);
        jobs.runWaiting(organisation.tenant(), mail);
        assertThat(mailServer.received()).isEmpty();
    }

    @Test
    void withoutAMailServerNothingIsQueued() {
        address("ward@hospital.example");
        NewDeviceMail none = mail(false);
        tell(none);
        assertThat(jobs.waiting(organisation.tenant(), none)).isEmpty();
    }

    private void address(String address) {
        NoticeSettings settings = new NoticeSettings(LocalTime.of(20, 0), LocalTime.of(7, 0), 9, false, address);
        organisation.in(() -> reminders.change(supervisor, settings).orThrow());
    }

    private void tell(NewDeviceMail to) {
        organisation.in(() -> {
            to.seen(new NewDevice(supervisor, Device.of("Mozilla/5.0 (X11; Linux) Firefox/140.0")));
            return true;
        });
    }

    private NewDeviceMail mail(boolean set) {
        JavaMailSenderImpl sender = new JavaMailSenderImpl();
        sender.setHost("127.0.0.1");
        sender.setPort(mailServer.port());
        StaticListableBeanFactory beans = new StaticListableBeanFactory(set ? Map.of("sender", sender) : Map.of());
        Mail to = new Mail(beans.getBeanProvider(JavaMailSender.class), "scrubline@hospital.example");
        return new NewDeviceMail(new OwnerMail(reminders, to, messages, "https://scrubline.example"), queue);
    }
}
