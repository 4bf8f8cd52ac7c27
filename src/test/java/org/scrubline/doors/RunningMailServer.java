package org.scrubline.doors;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.scrubline.support.SmtpReceiver;
import org.springframework.boot.test.util.TestPropertyValues;
import org.springframework.context.ApplicationContextInitializer;
import org.springframework.context.ConfigurableApplicationContext;

/** A mail server on this machine that keeps what it is handed. */
final class RunningMailServer implements ApplicationContextInitializer<ConfigurableApplicationContext> {

    private static final SmtpReceiver RECEIVER = started();
    private static final Pattern CODE = Pattern.compile("\\b((?:[A-Z2-9]{5}-){3}[A-Z2-9]{5})\\b");

    private static SmtpReceiver started() {
        try {
            return new SmtpReceiver();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Override
    public void initialize(ConfigurableApplicationContext context) {
        TestPropertyValues.of("spring.mail.host=127.0.0.1", "spring.mail.port=" + RECEIVER.port())
                .applyTo(context);
    }

    /** Every mail to an address so far, with its envelope, the oldest first. */
    static List<String> to(String address) {
        return RECEIVER.received().stream()
                .filter(mail -> mail.contains("RCPT TO:<" + address + ">"))
                .toList();
    }

    /** The code in a mail. */
    static String code(String mail) {
        Matcher matcher = CODE.matcher(mail);
        if (!matcher.find()) {
            throw new AssertionError("no code in " + mail);
        }
        return matcher.group(1);
    }
}
