import type { MultipartFile, MultipartValue } from '@fastify/multipart';
import type { FastifyRequest } from 'fastify';
import { Refusal } from '../../platform/refusals/refusal.js';
import { wrongField } from '../contract/field-error.js';
import type { UploadedPart } from './uploaded-part.js';

const FIELD = 'files';
const LONGEST_NAME = 200;

/** The parts of an upload, whole: a JSON body is one part, a form has one or more called `files`. */
export async function uploadedParts(request: FastifyRequest, limit: number): Promise<UploadedPart[]> {
  if (request.isMultipart()) return formParts(request, limit);
  if (Buffer.isBuffer(request.body)) return [{ name: 'schedule.json', mediaType: 'application/json', bytes: request.body }];
  throw new Refusal('wrong-type', 'Send a wall schedule as JSON, or as multipart/form-data with parts called files.');
}

async function formParts(request: FastifyRequest, limit: number): Promise<UploadedPart[]> {
  const parts: UploadedPart[] = [];
  let bytes = 0;
  try {
    for await (const part of request.parts()) {
      const file = filePart(part);
      const content = await file.toBuffer();
      bytes += content.length;
      if (bytes > limit) throw new Refusal('too-large', `The files of one schedule hold at most ${limit} bytes together.`);
      parts.push({
        name: file.filename.slice(0, LONGEST_NAME),
        mediaType: file.mimetype.slice(0, LONGEST_NAME),
        bytes: content,
        whenGone: (told) => goneFrom(request, told),
      });
    }
  } catch (error) {
    request.raw.resume();
    throw isTold(error) ? error : new Refusal('unreadable', 'The form breaks off or is damaged.');
  }
  if (parts.length === 0) throw new Refusal('wrong-type', 'The form holds no part called files.');
  return parts;
}

/** A request that has been read whole ends only with its socket. */
function goneFrom({ raw: { socket } }: FastifyRequest, told: () => void): () => void {
  if (socket.destroyed) told();
  socket.once('close', told);
  return () => socket.off('close', told);
}

function filePart(part: MultipartFile | MultipartValue): MultipartFile {
  if (part.type === 'file' && part.fieldname === FIELD) return part;
  throw wrongField(
    'The form holds a part that is not read here.',
    `/${part.fieldname}`,
    part.fieldname,
    'parts called files, each with a file name',
  );
}

/** Errors that say themselves what they mean; what is left comes from the parser of forms, which only throws. */
const isTold = (error: unknown): boolean =>
  error instanceof Refusal || (error instanceof Error && ('statusCode' in error || 'code' in error));
