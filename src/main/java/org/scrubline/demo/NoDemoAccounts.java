package org.scrubline.demo;

import java.util.List;
import java.util.stream.Stream;
import org.scrubline.demo.plan.DemoCast;
import org.scrubline.platform.UnsafeSettings;
import org.springframework.beans.factory.InitializingBean;
import org.springframework.context.annotation.Profile;
import org.springframework.security.core.userdetails.UserDetails;
import org.springframework.security.core.userdetails.UserDetailsService;
import org.springframework.security.core.userdetails.UsernameNotFoundException;
import org.springframework.security.crypto.password.PasswordEncoder;
import org.springframework.stereotype.Component;

/** Refuses to start the production profile on the data of the demo, whose password everybody knows. */
@Component
@Profile("production")
class NoDemoAccounts implements InitializingBean {

    private final UserDetailsService accounts;
    private final PasswordEncoder encoder;

    NoDemoAccounts(UserDetailsService accounts, PasswordEncoder encoder) {
        this.accounts = accounts;
        this.encoder = encoder;
    }

    @Override
    public void afterPropertiesSet() {
        List<String> open = Stream.of(
                        DemoCast.OTHERS.stream().map(DemoCast.Member::username),
                        DemoCast.SUPERVISORS.stream().map(DemoCast.Supervisor::username),
                        DemoCast.TRAINEES.stream().map(DemoCast.Trainee::username))
                .flatMap(names -> names)
                .filter(this::opens)
                .toList();
        if (!open.isEmpty()) {
            throw new UnsafeSettings(List.of(
                    "This installation holds accounts of the demo with their known password (" + String.join(", ", open)
                            + "): set scrubline.data-directory, or the database, to one of your own."));
        }
    }

    private boolean opens(String username) {
        try {
            UserDetails account = accounts.loadUserByUsername(username);
            return account.isEnabled() && encoder.matches(DemoPeople.PASSWORD, account.getPassword());
        } catch (UsernameNotFoundException nobody) {
            return false;
        }
    }
}
