package org.scrubline.access;

import java.util.Set;
import java.util.TreeSet;
import org.springframework.web.bind.annotation.RequestMethod;
import org.springframework.web.servlet.mvc.method.RequestMappingInfo;
import org.springframework.web.servlet.mvc.method.annotation.RequestMappingHandlerMapping;

/** Every method and pattern a controller of the application answers to. */
final class MappedRoutes {

    private MappedRoutes() {}

    static Set<String> of(RequestMappingHandlerMapping mapping) {
        Set<String> routes = new TreeSet<>();
        mapping.getHandlerMethods().forEach((info, handler) -> {
            if (handler.getBeanType().getName().startsWith("org.scrubline.")) {
                add(info, routes);
            }
        });
        return routes;
    }

    private static void add(RequestMappingInfo info, Set<String> routes) {
        for (String pattern : info.getPatternValues()) {
            Set<RequestMethod> methods = info.getMethodsCondition().getMethods();
            if (methods.isEmpty()) {
                routes.add("ANY " + pattern);
            }
            methods.forEach(method -> routes.add(method + " " + pattern));
        }
    }
}
