package org.scrubline.platform.provider;

import java.time.Duration;
import java.util.List;
import java.util.Objects;
import org.springframework.http.client.SimpleClientHttpRequestFactory;
import org.springframework.http.converter.FormHttpMessageConverter;
import org.springframework.security.oauth2.client.endpoint.RestClientAuthorizationCodeTokenResponseClient;
import org.springframework.security.oauth2.client.http.OAuth2ErrorResponseErrorHandler;
import org.springframework.security.oauth2.client.oidc.authentication.OidcAuthorizationCodeAuthenticationProvider;
import org.springframework.security.oauth2.client.oidc.authentication.OidcIdTokenDecoderFactory;
import org.springframework.security.oauth2.client.oidc.authentication.OidcIdTokenValidator;
import org.springframework.security.oauth2.client.registration.ClientRegistration;
import org.springframework.security.oauth2.core.DelegatingOAuth2TokenValidator;
import org.springframework.security.oauth2.core.converter.ClaimTypeConverter;
import org.springframework.security.oauth2.core.http.converter.OAuth2AccessTokenResponseHttpMessageConverter;
import org.springframework.security.oauth2.core.oidc.user.DefaultOidcUser;
import org.springframework.security.oauth2.jose.jws.SignatureAlgorithm;
import org.springframework.security.oauth2.jwt.JwtDecoder;
import org.springframework.security.oauth2.jwt.JwtTimestampValidator;
import org.springframework.security.oauth2.jwt.NimbusJwtDecoder;
import org.springframework.web.client.RestClient;
import org.springframework.web.client.RestTemplate;

/** The line from this server to the providers. Nothing is asked but the token, and the keys to check it with. */
final class ProviderLine {

    private static final Duration PATIENCE = Duration.ofSeconds(5);

    private ProviderLine() {}

    /** Exchanges a code for a token and checks it (OpenID Connect Core 1.0, section 3.1.3.7). */
    static OidcAuthorizationCodeAuthenticationProvider exchange() {
        RestClientAuthorizationCodeTokenResponseClient codes = new RestClientAuthorizationCodeTokenResponseClient();
        codes.setRestClient(RestClient.builder()
                .requestFactory(requests())
                .configureMessageConverters(bodies -> bodies.addCustomConverter(new FormHttpMessageConverter())
                        .addCustomConverter(new OAuth2AccessTokenResponseHttpMessageConverter()))
                .defaultStatusHandler(new OAuth2ErrorResponseErrorHandler())
                .build());
        OidcAuthorizationCodeAuthenticationProvider exchange = new OidcAuthorizationCodeAuthenticationProvider(
                codes, asked -> new DefaultOidcUser(List.of(), asked.getIdToken()));
        exchange.setJwtDecoderFactory(ProviderLine::tokens);
        return exchange;
    }

    /** One way of signing is taken, so that no token can choose a weaker one or none. */
    private static JwtDecoder tokens(ClientRegistration registration) {
        String keys = Objects.requireNonNull(registration.getProviderDetails().getJwkSetUri());
        NimbusJwtDecoder decoder = NimbusJwtDecoder.withJwkSetUri(keys)
                .jwsAlgorithm(SignatureAlgorithm.RS256)
                .restOperations(new RestTemplate(requests()))
                .build();
        decoder.setJwtValidator(new DelegatingOAuth2TokenValidator<>(
                new JwtTimestampValidator(), new OidcIdTokenValidator(registration)));
        decoder.setClaimSetConverter(
                new ClaimTypeConverter(OidcIdTokenDecoderFactory.createDefaultClaimTypeConverters()));
        return decoder;
    }

    private static SimpleClientHttpRequestFactory requests() {
        SimpleClientHttpRequestFactory requests = new SimpleClientHttpRequestFactory();
        requests.setConnectTimeout(PATIENCE);
        requests.setReadTimeout(PATIENCE);
        return requests;
    }
}
