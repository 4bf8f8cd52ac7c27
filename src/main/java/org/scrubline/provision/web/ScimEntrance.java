package org.scrubline.provision.web;

import org.scrubline.provision.ProvisionTokens;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.core.annotation.Order;
import org.springframework.security.config.annotation.web.builders.HttpSecurity;
import org.springframework.security.config.annotation.web.configurers.AbstractHttpConfigurer;
import org.springframework.security.config.http.SessionCreationPolicy;
import org.springframework.security.web.SecurityFilterChain;
import org.springframework.security.web.access.intercept.AuthorizationFilter;

/** The way in for directories: a token in each request, no session, no cookie, and so no form of another site. */
@Configuration(proxyBeanMethods = false)
class ScimEntrance {

    static final String BASE = "/scim/v2";

    @Bean
    @Order(1)
    SecurityFilterChain directories(HttpSecurity http, ProvisionTokens tokens) throws Exception {
        return http.securityMatcher(BASE + "/**")
                .csrf(AbstractHttpConfigurer::disable)
                .requestCache(AbstractHttpConfigurer::disable)
                .logout(AbstractHttpConfigurer::disable)
                .sessionManagement(sessions -> sessions.sessionCreationPolicy(SessionCreationPolicy.STATELESS))
                .authorizeHttpRequests(requests -> requests.anyRequest().permitAll())
                .addFilterBefore(new ScimTokenFilter(tokens), AuthorizationFilter.class)
                .build();
    }
}
