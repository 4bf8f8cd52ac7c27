package org.scrubline.platform.security;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.security.config.annotation.web.builders.HttpSecurity;
import org.springframework.security.config.annotation.web.configurers.HeadersConfigurer.FrameOptionsConfig;
import org.springframework.security.core.Authentication;
import org.springframework.security.crypto.argon2.Argon2PasswordEncoder;
import org.springframework.security.crypto.password.DelegatingPasswordEncoder;
import org.springframework.security.crypto.password.PasswordEncoder;
import org.springframework.security.web.SecurityFilterChain;
import org.springframework.security.web.authentication.UsernamePasswordAuthenticationFilter;
import org.springframework.security.web.authentication.logout.LogoutFilter;
import org.springframework.security.web.context.SecurityContextHolderFilter;
import org.springframework.security.web.header.HeaderWriterFilter;
import org.springframework.security.web.header.writers.CrossOriginOpenerPolicyHeaderWriter.CrossOriginOpenerPolicy;
import org.springframework.security.web.header.writers.ReferrerPolicyHeaderWriter.ReferrerPolicy;

/** Who may come in. What each person may see is decided by the rooms, which answer 404 for what is not theirs. */
@Configuration(proxyBeanMethods = false)
class SecurityConfiguration {

    private static final String[] OPEN = {
        "/login",
        PasskeyLogInFilter.PATH,
        EntryFilter.SHOW,
        EntryFilter.CHOOSE,
        "/login/help",
        "/login/new-password",
        "/setup",
        "/welcome",
        "/welcome/provider",
        "/error",
        "/at-the-table",
        "/at-the-table/session",
        "/service-worker.js",
        "/manifest.webmanifest",
        "/css/**",
        "/js/**",
        "/img/**",
        "/mark.svg",
        "/favicon.ico",
        "/actuator/health/**"
    };

    @Bean
    SecurityFilterChain filterChain(
            HttpSecurity http,
            LoginThrottle throttle,
            LoginRecord record,
            OrganisationEntry organisations,
            PasskeyEntrance passkeys,
            CodeEntrance codes,
            ProviderEntrance providers,
            LogInMarks marks)
            throws Exception {
        return http.authorizeHttpRequests(requests ->
                        requests.requestMatchers(OPEN).permitAll().anyRequest().authenticated())
                .csrf(csrf -> csrf.csrfTokenRepository(new FormTokens()))
                .formLogin(form -> form.loginPage("/login").successHandler(marks))
                .exceptionHandling(denied -> denied.authenticationEntryPoint(new EntryPoint()))
                .logout(logout -> logout.addLogoutHandler(SecurityConfiguration::clearCache)
                        .logoutSuccessUrl("/login?left"))
                .headers(headers -> headers.frameOptions(FrameOptionsConfig::deny)
                        .referrerPolicy(referrer -> referrer.policy(ReferrerPolicy.SAME_ORIGIN))
                        .crossOriginOpenerPolicy(opener -> opener.policy(CrossOriginOpenerPolicy.SAME_ORIGIN))
                        .permissionsPolicyHeader(
                                permissions -> permissions.policy("camera=(), microphone=(), geolocation=()")))
                .addFilterBefore(new CspNonceFilter(), HeaderWriterFilter.class)
                .addFilterBefore(new LoginThrottleFilter(throttle, record), UsernamePasswordAuthenticationFilter.class)
                .addFilterAfter(passkeys.filter(), UsernamePasswordAuthenticationFilter.class)
                .addFilterAfter(codes.filter(), UsernamePasswordAuthenticationFilter.class)
                .addFilterAfter(providers.start(), UsernamePasswordAuthenticationFilter.class)
                .addFilterAfter(providers.filter(), UsernamePasswordAuthenticationFilter.class)
                .addFilterAfter(new MembershipFilter(organisations), SecurityContextHolderFilter.class)
                .addFilterBefore(codes.guard(), LogoutFilter.class)
                .build();
    }

    /**
     * Pages the browser may still hold go. Never its storage: work that waits there, sealed, outlives log-out on purpose
     * (decision 0014).
     */
    private static void clearCache(
            HttpServletRequest request, HttpServletResponse response, @Nullable Authentication left) {
        response.setHeader("Clear-Site-Data", "\"cache\"");
    }

    /** Argon2id; the prefix in front of each hash lets a later release move on without locking anyone out. */
    @Bean
    PasswordEncoder passwordEncoder() {
        return new DelegatingPasswordEncoder(
                "argon2", Map.of("argon2", Argon2PasswordEncoder.defaultsForSpringSecurity_v5_8()));
    }
}
