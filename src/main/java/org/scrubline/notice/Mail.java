package org.scrubline.notice;

import jakarta.mail.MessagingException;
import jakarta.mail.internet.MimeMessage;
import java.nio.charset.StandardCharsets;
import org.jspecify.annotations.Nullable;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.mail.MailParseException;
import org.springframework.mail.javamail.JavaMailSender;
import org.springframework.mail.javamail.MimeMessageHelper;
import org.springframework.stereotype.Component;

/** Sends plain text, where the installation names a mail server. */
@Component
class Mail {

    private final @Nullable JavaMailSender sender;
    private final String from;

    Mail(ObjectProvider<JavaMailSender> sender, @Value("${scrubline.notice.from}") String from) {
        this.sender = sender.getIfAvailable();
        this.from = from;
    }

    boolean isSet() {
        return sender != null;
    }

    /**
     * Hands one message to the mail server.
     *
     * @throws org.springframework.mail.MailException when it was not taken
     */
    void send(String to, String subject, String text) {
        if (sender == null) {
            throw new IllegalStateException("no mail server is set");
        }
        MimeMessage message = sender.createMimeMessage();
        try {
            MimeMessageHelper helper = new MimeMessageHelper(message, StandardCharsets.UTF_8.name());
            helper.setFrom(from);
            helper.setTo(to);
            helper.setSubject(subject);
            helper.setText(text);
            message.setHeader("Auto-Submitted", "auto-generated");
        } catch (MessagingException e) {
            throw new MailParseException(e);
        }
        sender.send(message);
    }
}
