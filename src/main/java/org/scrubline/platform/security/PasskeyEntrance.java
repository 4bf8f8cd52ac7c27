package org.scrubline.platform.security;

import org.scrubline.platform.passkey.PasskeyAnswers;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.security.authentication.AuthenticationEventPublisher;
import org.springframework.security.authentication.ProviderManager;
import org.springframework.stereotype.Component;

/**
 * Puts the log-in by passkey together. Its parts are no beans: a provider that is one takes the password's place, and a
 * filter that is one runs outside the security chain as well.
 */
@Component
class PasskeyEntrance {

    private final ProviderManager manager;
    private final LogInMarks marks;
    private final ApplicationEventPublisher events;

    PasskeyEntrance(
            PasskeyAnswers answers,
            AccountStore accounts,
            LoginThrottle throttle,
            AuthenticationEventPublisher publisher,
            LogInMarks marks,
            ApplicationEventPublisher events) {
        this.manager = new ProviderManager(new PasskeyProvider(answers, accounts, throttle));
        this.manager.setAuthenticationEventPublisher(publisher);
        this.marks = marks;
        this.events = events;
    }

    PasskeyLogInFilter filter() {
        PasskeyLogInFilter filter = new PasskeyLogInFilter(manager, marks);
        filter.setApplicationEventPublisher(events);
        return filter;
    }
}
