package org.scrubline.look;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.context.support.ResourceBundleMessageSource;
import org.springframework.mock.web.MockHttpServletRequest;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.mock.web.MockServletContext;
import org.thymeleaf.context.WebContext;
import org.thymeleaf.spring6.SpringTemplateEngine;
import org.thymeleaf.templateresolver.ClassLoaderTemplateResolver;
import org.thymeleaf.templateresolver.StringTemplateResolver;
import org.thymeleaf.web.servlet.JakartaServletWebApplication;

/** Renders the real templates with the real messages, without a server. */
final class Rendering {

    private static final SpringTemplateEngine ENGINE = engine();

    private Rendering() {}

    /** The markup of one example, in its wrapping if it has one. */
    static String example(Component component, Component.Example example) {
        String arguments = example.with().entrySet().stream()
                .map(entry -> entry.getKey() + "=" + argument(entry.getKey(), entry.getValue()))
                .collect(Collectors.joining(", "));
        String name = component.name();
        String call = "<th:block th:replace=\"~{components/%s :: %s(%s)}\"/>".formatted(name, name, arguments);
        String markup = template(call, Map.of("example", example.with()));
        String wrap = example.wrap();
        return wrap == null ? markup : wrap.replace("{}", markup);
    }

    /** All examples of a component on one page of the product's layout. */
    static String page(Component component) {
        List<Map<String, String>> examples = component.examples().stream()
                .map(example -> Map.of("name", example.name(), "html", example(component, example)))
                .toList();
        return template("examples/page", Map.of("component", component.name(), "examples", examples));
    }

    /** The result of a template named by its path under {@code templates}, or given as text. */
    static String template(String template, Map<String, ?> variables) {
        var application = JakartaServletWebApplication.buildApplication(new MockServletContext());
        var exchange = application.buildExchange(new MockHttpServletRequest(), new MockHttpServletResponse());
        return ENGINE.process(template, new WebContext(exchange, Locale.ENGLISH, Map.copyOf(variables)));
    }

    private static String argument(String name, @Nullable Object value) {
        boolean fragment = value instanceof String text && text.startsWith("~{");
        return fragment ? String.valueOf(value) : "${example['" + name + "']}";
    }

    private static SpringTemplateEngine engine() {
        ClassLoaderTemplateResolver files = new ClassLoaderTemplateResolver();
        files.setPrefix("templates/");
        files.setSuffix(".html");
        files.setCharacterEncoding("UTF-8");
        files.setCheckExistence(true);
        files.setOrder(1);
        StringTemplateResolver texts = new StringTemplateResolver();
        texts.setOrder(2);
        ResourceBundleMessageSource messages = new ResourceBundleMessageSource();
        messages.setBasenames("messages/layout", "messages/components", "messages/examples");
        messages.setDefaultEncoding("UTF-8");
        messages.setFallbackToSystemLocale(false);
        SpringTemplateEngine engine = new SpringTemplateEngine();
        engine.addTemplateResolver(files);
        engine.addTemplateResolver(texts);
        engine.setTemplateEngineMessageSource(messages);
        return engine;
    }
}
