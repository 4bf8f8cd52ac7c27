package org.scrubline.doors;

import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;

import jakarta.servlet.http.Cookie;
import java.io.IOException;
import java.net.URI;
import java.net.URLDecoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Map;
import java.util.stream.Collectors;
import org.scrubline.platform.SignedIn;
import org.scrubline.support.TestOrganisations;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.ResultActions;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;

/** One browser that goes to the provider and back: its session here, and real requests to the provider. */
final class ProviderBrowser {

    private final MockMvc mockMvc;
    private final HttpClient toProvider = HttpClient.newHttpClient();
    private Cookie session = new Cookie("SCRUBLINE", "none");

    ProviderBrowser(MockMvc mockMvc) {
        this.mockMvc = mockMvc;
    }

    static Map<String, String> parameters(URI address) {
        return Arrays.stream(address.getRawQuery().split("&"))
                .map(pair -> pair.split("=", 2))
                .collect(Collectors.toMap(pair -> pair[0], pair -> URLDecoder.decode(pair[1], StandardCharsets.UTF_8)));
    }

    ResultActions send(MockHttpServletRequestBuilder request) throws Exception {
        ResultActions answer =
                mockMvc.perform(request.cookie(session).with(csrf()).with(sent -> {
                    sent.setRemoteAddr("198.51.100.35");
                    return sent;
                }));
        for (Cookie cookie : answer.andReturn().getResponse().getCookies()) {
            session = cookie;
        }
        return answer;
    }

    String page(String path) throws Exception {
        return send(get(path)).andReturn().getResponse().getContentAsString();
    }

    ResultActions password(SignedIn who) throws Exception {
        return send(post("/login").param("username", who.username()).param("password", TestOrganisations.PASSWORD));
    }

    /** Begins a log-in; the address of the provider it leads to. */
    URI question(String connection) throws Exception {
        String location =
                send(get("/login/with/" + connection)).andReturn().getResponse().getRedirectedUrl();
        return URI.create(location == null ? "" : location);
    }

    /** Asks the provider, which vouches for the subject at once; the address it leads back to. */
    URI vouched(URI question, String subject, Map<String, ?> claims) throws IOException, InterruptedException {
        URI answer = answered(question);
        Vouching.remember(String.valueOf(parameters(answer).get("code")), subject, claims);
        return answer;
    }

    URI answered(URI question) throws IOException, InterruptedException {
        return URI.create(toProvider
                .send(HttpRequest.newBuilder(question).build(), BodyHandlers.discarding())
                .headers()
                .firstValue("Location")
                .orElseThrow());
    }

    /** Comes back from the provider. */
    ResultActions back(URI answer) throws Exception {
        MockHttpServletRequestBuilder request = get(answer.getPath());
        parameters(answer).forEach(request::param);
        return send(request);
    }

    /** There and back. */
    ResultActions through(String connection, String subject, Map<String, ?> claims) throws Exception {
        return back(vouched(question(connection), subject, claims));
    }

    boolean isIn(SignedIn who) throws Exception {
        return page("/account/keys").contains(who.printedName());
    }
}
