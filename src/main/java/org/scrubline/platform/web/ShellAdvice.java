package org.scrubline.platform.web;

import jakarta.servlet.http.HttpServletRequest;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.AccountMail;
import org.scrubline.platform.NavItem;
import org.scrubline.platform.Navigation;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.provider.Connections;
import org.scrubline.platform.security.Devices;
import org.scrubline.platform.security.OrganisationEntry;
import org.springframework.context.MessageSource;
import org.springframework.core.env.Environment;
import org.springframework.core.env.Profiles;
import org.springframework.security.core.Authentication;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.ControllerAdvice;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.servlet.support.RequestContextUtils;

/** Gives every page its frame. */
@ControllerAdvice
class ShellAdvice {

    private final List<Navigation> rooms;
    private final MessageSource messages;
    private final Devices devices;
    private final Connections connections;
    private final AccountMail mail;
    private final OrganisationEntry organisations;
    private final boolean demo;

    ShellAdvice(
            List<Navigation> rooms,
            MessageSource messages,
            Devices devices,
            Connections connections,
            AccountMail mail,
            OrganisationEntry organisations,
            Environment environment) {
        this.organisations = organisations;
        this.connections = connections;
        this.mail = mail;
        this.rooms = rooms;
        this.messages = messages;
        this.devices = devices;
        this.demo = environment.acceptsProfiles(Profiles.of("demo"));
    }

    @ModelAttribute("shell")
    @Nullable
    Shell shell(
            @AuthenticationPrincipal @Nullable Object principal,
            @Nullable Authentication authentication,
            Locale locale,
            HttpServletRequest request) {
        return principal instanceof SignedIn who
                ? new Shell(
                        who.printedName(),
                        roles(who, locale),
                        who.organisationName(),
                        navigation(who),
                        demo,
                        logInPages(who, authentication),
                        !devices.unknown(who, request).isEmpty())
                : null;
    }

    /** Gives the frame to a page that tells of a failure: its model starts empty. */
    void round(Model model, HttpServletRequest request) {
        Authentication authentication = SecurityContextHolder.getContext().getAuthentication();
        Object principal = authentication == null ? null : authentication.getPrincipal();
        model.addAttribute("shell", shell(principal, authentication, RequestContextUtils.getLocale(request), request));
    }

    List<NavItem> navigation(SignedIn who) {
        return rooms.stream()
                .flatMap(room -> room.entries(who).stream())
                .sorted(Comparator.comparingInt(NavItem::order))
                .toList();
    }

    /**
     * The page of the address is there where mail can be sent, that of the provider where the organisation has one, that of
     * the organisation for whoever belongs to several.
     */
    private List<String> logInPages(SignedIn who, @Nullable Authentication authentication) {
        Stream<String> address = mail.isSet() ? Stream.of("address") : Stream.of();
        Stream<String> provider = connections.of(who.tenantId()).map(one -> "provider").stream();
        Stream<String> organisation =
                authentication != null && organisations.several(who.accountId(), authentication.getAuthorities())
                        ? Stream.of("organisation")
                        : Stream.of();
        return Stream.of(Stream.of("keys", "second-factor", "password", "sessions"), address, provider, organisation)
                .flatMap(pages -> pages)
                .toList();
    }

    private String roles(SignedIn who, Locale locale) {
        return who.grants().stream()
                .map(SignedIn.Grant::role)
                .distinct()
                .sorted()
                .map(Role::messageKey)
                .map(key -> messages.getMessage(key, null, locale))
                .collect(Collectors.joining(", "));
    }
}
