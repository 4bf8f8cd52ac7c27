package org.scrubline.platform.provider;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.util.Collection;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.provider.ProviderFault.Reason;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.security.authentication.AuthenticationProvider;
import org.springframework.security.core.Authentication;
import org.springframework.security.oauth2.client.authentication.OAuth2LoginAuthenticationToken;
import org.springframework.security.oauth2.client.web.DefaultOAuth2AuthorizationRequestResolver;
import org.springframework.security.oauth2.client.web.HttpSessionOAuth2AuthorizationRequestRepository;
import org.springframework.security.oauth2.client.web.OAuth2AuthorizationRequestCustomizers;
import org.springframework.security.oauth2.core.OAuth2AuthenticationException;
import org.springframework.security.oauth2.core.endpoint.OAuth2AuthorizationExchange;
import org.springframework.security.oauth2.core.endpoint.OAuth2AuthorizationRequest;
import org.springframework.security.oauth2.core.endpoint.OAuth2AuthorizationResponse;
import org.springframework.security.oauth2.core.endpoint.OAuth2ParameterNames;
import org.springframework.security.oauth2.core.oidc.user.OidcUser;
import org.springframework.stereotype.Component;

/** Leads somebody to a provider and takes its answer: a code that is exchanged for a token, nothing in the address. */
@Component
public class ProviderAnswers {

    private static final Logger log = LoggerFactory.getLogger(ProviderAnswers.class);
    /** Longest subject in characters (OpenID Connect Core 1.0, section 2). */
    private static final int SUBJECT_LENGTH = 255;

    private final Registrations registrations;
    private final AuthenticationProvider exchange = ProviderLine.exchange();
    private final HttpSessionOAuth2AuthorizationRequestRepository asked =
            new HttpSessionOAuth2AuthorizationRequestRepository();

    ProviderAnswers(Registrations registrations) {
        this.registrations = registrations;
    }

    /**
     * Remembers a question in the session, with a state, a nonce and a proof key of its own.
     *
     * @return the address of the provider to lead to
     */
    public String ask(Connection connection, HttpServletRequest request, HttpServletResponse response) {
        DefaultOAuth2AuthorizationRequestResolver questions =
                new DefaultOAuth2AuthorizationRequestResolver(name -> registrations.of(connection));
        questions.setAuthorizationRequestCustomizer(OAuth2AuthorizationRequestCustomizers.withPkce());
        OAuth2AuthorizationRequest question = questions.resolve(request, connection.name());
        if (question == null) {
            throw new ProviderFault(Reason.UNREACHABLE);
        }
        asked.saveAuthorizationRequest(question, request, response);
        return question.getAuthorizationRequestUri();
    }

    /**
     * Who came back.
     *
     * @throws ProviderFault when nobody asked, the answer belongs to another question or provider, or it does not hold
     */
    public ProviderIdentity answer(Connection connection, HttpServletRequest request, HttpServletResponse response) {
        OAuth2AuthorizationRequest question = asked.removeAuthorizationRequest(request, response);
        String issuer = request.getParameter("iss");
        if (question == null
                || !connection.name().equals(question.getAttribute(OAuth2ParameterNames.REGISTRATION_ID))
                || (issuer != null && !issuer.equals(connection.issuer()))) {
            throw new ProviderFault(Reason.REFUSED);
        }
        String back = Optional.ofNullable(question.getRedirectUri()).orElse("");
        try {
            Authentication shown = exchange.authenticate(new OAuth2LoginAuthenticationToken(
                    registrations.of(connection), new OAuth2AuthorizationExchange(question, said(request, back))));
            return identity(connection, shown);
        } catch (OAuth2AuthenticationException | IllegalArgumentException e) {
            log.warn("Security note: log-in through {} refused: {}", connection.name(), e.getMessage());
            throw new ProviderFault(Reason.REFUSED, e);
        }
    }

    private static OAuth2AuthorizationResponse said(HttpServletRequest request, String back) {
        String code = parameter(request, OAuth2ParameterNames.CODE).orElse("");
        OAuth2AuthorizationResponse.Builder answer = code.isEmpty()
                ? OAuth2AuthorizationResponse.error(
                        parameter(request, OAuth2ParameterNames.ERROR).orElse("no_code"))
                : OAuth2AuthorizationResponse.success(code);
        return answer.redirectUri(back)
                .state(parameter(request, OAuth2ParameterNames.STATE).orElse(""))
                .build();
    }

    private static Optional<String> parameter(HttpServletRequest request, String name) {
        return Optional.ofNullable(request.getParameter(name)).filter(value -> !value.isBlank());
    }

    private static ProviderIdentity identity(Connection connection, @Nullable Authentication shown) {
        if (shown == null || !(shown.getPrincipal() instanceof OidcUser person)) {
            throw new IllegalArgumentException("no identity in the answer");
        }
        String subject = person.getSubject();
        if (subject == null || subject.isBlank() || subject.length() > SUBJECT_LENGTH || subject.indexOf('\0') >= 0) {
            throw new IllegalArgumentException("no usable subject in the answer");
        }
        Stream<String> methods =
                Stream.ofNullable(person.getAuthenticationMethods()).flatMap(Collection::stream);
        boolean two = Stream.concat(methods, Stream.ofNullable(person.getAuthenticationContextClass()))
                .anyMatch(connection.secondFactor()::contains);
        return new ProviderIdentity(connection.issuer(), subject, two);
    }
}
