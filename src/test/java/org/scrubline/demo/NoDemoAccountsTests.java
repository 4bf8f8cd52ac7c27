package org.scrubline.demo;

import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.scrubline.platform.UnsafeSettings;
import org.springframework.security.core.userdetails.User;
import org.springframework.security.core.userdetails.UserDetails;
import org.springframework.security.crypto.argon2.Argon2PasswordEncoder;
import org.springframework.security.crypto.password.PasswordEncoder;
import org.springframework.security.provisioning.InMemoryUserDetailsManager;

class NoDemoAccountsTests {

    private static final PasswordEncoder ENCODER = Argon2PasswordEncoder.defaultsForSpringSecurity_v5_8();

    @Test
    void theDataOfTheDemoIsRefusedByName() {
        assertThatThrownBy(() -> check(account("brannock", DemoPeople.PASSWORD, false)))
                .isInstanceOf(UnsafeSettings.class)
                .hasMessageContaining("accounts of the demo")
                .hasMessageContaining("brannock");
    }

    @Test
    void anAccountOfThatNameWithAnotherPasswordOrAClosedOneIsNot() {
        assertThatCode(() -> check(account("brannock", "a sentence of somebody", false)))
                .doesNotThrowAnyException();
        assertThatCode(() -> check(account("brannock", DemoPeople.PASSWORD, true)))
                .doesNotThrowAnyException();
        assertThatCode(() -> check()).doesNotThrowAnyException();
    }

    private static void check(UserDetails... accounts) {
        new NoDemoAccounts(new InMemoryUserDetailsManager(accounts), ENCODER).afterPropertiesSet();
    }

    private static UserDetails account(String name, String password, boolean closed) {
        return User.withUsername(name)
                .password(ENCODER.encode(password))
                .disabled(closed)
                .build();
    }
}
