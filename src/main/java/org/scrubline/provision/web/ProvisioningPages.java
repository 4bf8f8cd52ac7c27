package org.scrubline.provision.web;

import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Arrays;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.InvitationLife;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.Wording;
import org.scrubline.provision.ProvisionTokens;
import org.scrubline.provision.Provisioning;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.context.i18n.LocaleContextHolder;
import org.springframework.stereotype.Component;

/** Makes the administrator's page of the directory. */
@Component
class ProvisioningPages {

    private final ProvisionTokens tokens;
    private final Provisioning provisioning;
    private final Wording wording;
    private final String base;

    ProvisioningPages(
            ProvisionTokens tokens,
            Provisioning provisioning,
            Wording wording,
            @Value("${scrubline.web.origin}") String origin) {
        this.tokens = tokens;
        this.provisioning = provisioning;
        this.wording = wording;
        this.base = origin.strip().replaceFirst("/+$", "") + ScimEntrance.BASE;
    }

    /**
     * The page.
     *
     * @param base address the directory sends to
     * @param organisation id for the settings of a connection
     * @param recent whether the person showed who they are just now, without which no token is made
     */
    record Page(
            String base,
            String organisation,
            boolean recent,
            List<TokenLine> tokens,
            List<PersonLine> waiting,
            List<Option> roles,
            List<Option> lives) {}

    /** A token; {@code used} is null until it is. */
    record TokenLine(
            UUID id, String label, String made, @Nullable String used) {}

    /** Somebody without a role. */
    record PersonLine(UUID id, String name, String username) {}

    /** A choice of a list. */
    record Option(String value, String label) {}

    Page of(SignedIn who, boolean recent) {
        return new Page(
                base,
                who.tenantId().toString(),
                recent,
                tokens.open().stream().map(ProvisioningPages::line).toList(),
                provisioning.withoutRole().stream()
                        .map(user -> new PersonLine(user.id(), user.printedName(), user.username()))
                        .toList(),
                Arrays.stream(Role.values())
                        .map(role -> new Option(role.name(), wording.text(role.messageKey())))
                        .toList(),
                Arrays.stream(InvitationLife.values())
                        .map(life -> new Option(life.name(), wording.text(life.messageKey())))
                        .toList());
    }

    private static TokenLine line(ProvisionTokens.Token token) {
        Instant used = token.lastUsedAt();
        return new TokenLine(token.id(), token.label(), at(token.createdAt()), used == null ? null : at(used));
    }

    private static String at(Instant instant) {
        return DateTimeFormatter.ofPattern("d MMM uuuu, HH:mm 'UTC'", LocaleContextHolder.getLocale())
                .format(instant.atZone(ZoneOffset.UTC));
    }
}
