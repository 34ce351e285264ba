import { Injectable, type CallHandler, type ExecutionContext, type NestInterceptor } from '@nestjs/common';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { tap, type Observable } from 'rxjs';
import { entityTag } from '../../platform/http/if-match.js';

/** What an answer says in its body, said in its headers too: the next page as a link, the version as an entity tag. */
@Injectable()
export class AnswerHeaders implements NestInterceptor {
  intercept(context: ExecutionContext, next: CallHandler): Observable<unknown> {
    if (context.getType<string>() !== 'http') return next.handle();
    const request = context.switchToHttp().getRequest<FastifyRequest>();
    const reply = context.switchToHttp().getResponse<FastifyReply>();
    return next.handle().pipe(
      tap((answer: unknown) => {
        if (typeof answer !== 'object' || answer === null || reply.sent) return;
        if ('next' in answer && typeof answer.next === 'string')
          void reply.header('link', `<${nextPage(request.url, answer.next)}>; rel="next"`);
        if ('version' in answer && typeof answer.version === 'number') void reply.header('etag', entityTag(answer.version));
      }),
    );
  }
}

function nextPage(url: string, after: string): string {
  const [path = '', query = ''] = url.split('?');
  const parameters = new URLSearchParams(query);
  parameters.set('after', after);
  return `${path}?${parameters.toString()}`;
}
